import { expect, it } from "vitest";
import { elementAt } from "../present";
import { describeInBrowser, home, joinBrowser } from "./browser";
import { openPage } from "./pageSession";

describeInBrowser("under a finger", () => {
  it.each([
    ["a phone", { width: 390, height: 844 }],
    ["a tablet", { width: 820, height: 1180 }],
  ] as const)(
    "a swipe scrolls, a tap selects, a held finger selects more: %s",
    async (_, viewport) => {
      const session = await openPage(await joinBrowser(), home, { viewport, isMobile: true });
      const { page, context } = session;
      // Where a finger comes down here, no cells are merged.
      await session.show("Squad plan");
      const devtools = await context.newCDPSession(page);
      const cells = (await page.locator("canvas[id^=univer-sheet-main]").boundingBox())!;
      // The middle of column B, beside the rows' numbers and column A.
      const x = await page.evaluate((left) => {
        const sheet = window.spare!.api.getActiveWorkbook()!.getActiveSheet();
        return left + 46 + sheet.getColumnWidth(0) + sheet.getColumnWidth(1) / 2;
      }, cells.x);
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

      const low = cells.y + cells.height - 60;
      await touch("touchStart", low);
      await drag(low, low - 300);
      await expect.poll(session.firstRow).toBeGreaterThan(5);
      expect(await session.selected()).toBe("A1");

      await touch("touchStart", cells.y + 200);
      await touch("touchEnd", cells.y + 200);
      await expect.poll(session.selected).toMatch(/^B\d+$/);

      await touch("touchStart", cells.y + 200);
      // A finger that rests for half a second by the page's own clock is a finger that is held.
      await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 600)));
      await drag(cells.y + 200, cells.y + 320);
      await expect.poll(session.selected).toMatch(/^B\d+:B\d+$/);

      const bar = page.locator("[data-u-comp=slide-tab-bar]");
      const offset = () => bar.evaluate((element) => element.scrollLeft);
      const before = await offset();
      await page.getByRole("button", { name: "Later sheets" }).click();
      await expect.poll(offset).toBeGreaterThan(before);

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
