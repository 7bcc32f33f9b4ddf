import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it, vi } from "vitest";
import { elementAt } from "../present";
import { describeInBrowser, home, joinBrowser } from "./browser";
import { openPage, patience } from "./pageSession";

vi.setConfig({ testTimeout: 3 * patience });

describeInBrowser("under a finger", () => {
  let browser: Browser;

  beforeAll(async () => {
    browser = await joinBrowser();
  }, patience);

  afterAll(() => browser.close());

  it.each([
    ["a phone", { width: 390, height: 844 }],
    ["a tablet", { width: 820, height: 1180 }],
  ] as const)(
    "a swipe scrolls, a tap selects, a held finger selects more: %s",
    async (_, viewport) => {
      const session = await openPage(browser, home, { viewport, hasTouch: true, isMobile: true });
      const { page, context } = session;
      // Where a finger comes down here, no cells are merged.
      await session.show("Squad plan");
      const devtools = await context.newCDPSession(page);
      const cells = (await page.locator("canvas[id^=univer-sheet-main]").boundingBox())!;
      const x = cells.x + 200;
      const touch = (type: "touchStart" | "touchMove" | "touchEnd", y: number) =>
        devtools.send("Input.dispatchTouchEvent", {
          type,
          touchPoints: type === "touchEnd" ? [] : [{ x, y }],
        });
      const drag = async (from: number, to: number) => {
        for (let step = 1; step <= 10; step++)
          await touch("touchMove", from + (step * (to - from)) / 10);
        await touch("touchEnd", to);
      };
      const selected = () =>
        page.evaluate(() =>
          window.spare!.api.getActiveWorkbook()!.getActiveRange()!.getA1Notation(),
        );
      const firstRow = () =>
        page.evaluate(
          () =>
            window.spare!.api.getActiveWorkbook()!.getActiveSheet().getScrollState()
              .sheetViewStartRow,
        );

      const low = cells.y + cells.height - 60;
      await touch("touchStart", low);
      await drag(low, low - 300);
      await expect.poll(firstRow, { timeout: patience }).toBeGreaterThan(5);
      expect(await selected()).toBe("A1");

      await touch("touchStart", cells.y + 200);
      await touch("touchEnd", cells.y + 200);
      await expect.poll(selected, { timeout: patience }).toMatch(/^B\d+$/);

      await touch("touchStart", cells.y + 200);
      // A finger that rests for half a second is a finger that is held.
      await page.waitForTimeout(600);
      await drag(cells.y + 200, cells.y + 320);
      await expect.poll(selected, { timeout: patience }).toMatch(/^B\d+:B\d+$/);

      const bar = page.locator("[data-u-comp=slide-tab-bar]");
      const offset = () => bar.evaluate((element) => element.scrollLeft);
      const before = await offset();
      await page.getByRole("button", { name: "Later sheets" }).click();
      await expect.poll(offset, { timeout: patience }).toBeGreaterThan(before);

      const boxes = await page
        .locator("[data-u-comp=sheet-bar-append-button], [data-u-comp=slide-tab-bar]")
        .evaluateAll((elements) =>
          elements
            .map((element) => element.getBoundingClientRect())
            .filter(({ width }) => width > 0)
            .map(({ left, right }) => ({ left, right }))
            .sort((a, b) => a.left - b.left),
        );
      for (const [before, { left }] of boxes.slice(1).entries()) {
        expect(left).toBeGreaterThanOrEqual(elementAt(boxes, before).right - 1);
      }
      await session.close();
    },
  );
});
