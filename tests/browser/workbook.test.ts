import type { ICellData } from "@univerjs/core";
import { expect, it } from "vitest";
import { readDemo } from "../../src/tools/demo";
import { cellAddress } from "../../src/formula/address";
import { CONTENT_SECURITY_POLICY } from "../../src/hosts/page/policy";
import { named } from "../present";
import { computedDemo } from "../theDemo";
import { describeInBrowser, home, joinBrowser } from "./browser";
import { openForAll } from "./openForAll";
import type { PageSession } from "./pageSession";
import { openPage } from "./pageSession";

describeInBrowser("the embedded workbook", () => {
  let session: PageSession;

  openForAll(async () => {
    session = await openPage(await joinBrowser(), home);
  });

  it("opens on the demo, and computes in it what the engine computes without a screen", async () => {
    const data = readDemo();
    const book = await computedDemo();
    const formulas = data.sheetOrder.flatMap((id) => {
      const { name, cellData } = named(data.sheets, id);
      return Object.entries(cellData ?? {}).flatMap(([row, cells]) =>
        Object.entries(cells as Record<number, ICellData>)
          .filter(([, cell]) => cell.f)
          .map(([column]) => [name!, cellAddress(Number(row), Number(column))] as const),
      );
    });
    const expected = formulas.map(([sheet, address]) => book.read(sheet, address));

    expect(formulas.length).toBeGreaterThan(0);
    const readAll = () =>
      session.page.evaluate(
        (cells) => cells.map(([s, a]) => window.spare!.readCell(s, a)),
        formulas,
      );
    // Chromium and Node come with arithmetic libraries of their own, which differ in a last digit.
    const isSame = (value: unknown, other: unknown) =>
      typeof value === "number" && typeof other === "number"
        ? Math.abs(value - other) <= 1e-10 * Math.abs(other)
        : value === other;
    const different = async () =>
      (await readAll()).flatMap((value, index) =>
        isSame(value, expected[index])
          ? []
          : [{ at: formulas[index], value, other: expected[index] }],
      );
    await expect.poll(different).toEqual([]);
  });

  it("answers a formula typed into an empty cell, and again when an input changes", async () => {
    const sheet = await session.addSheet();
    await session.type("=SPARE.LOADFOR(140,5,2,2.5)");
    await session.shows(sheet, "A1").toBe(112.5);

    await session.type("140", "Tab");
    await session.type("=SPARE.LOADFOR(A2,5,2,2.5)");
    await session.shows(sheet, "B2").toBe(112.5);
    await session.go("A2");
    await session.type("160");
    await session.shows(sheet, "B2").toBe(130);
  });

  it("offers our functions while one is typed, and shows their arguments", async () => {
    const { page } = session;
    await session.addSheet();
    await page.keyboard.type("=spare.loadf", { delay: 20 });
    const offer = page.locator("li", { hasText: "SPARE.LOADFOR" });
    await offer.waitFor();
    expect(await offer.textContent()).toMatch(/SPARE\.LOADFOR\w+/);
    await offer.click();
    await page.getByText("[reserve]").first().waitFor();
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
  });

  it("says why a cell shows an error, when that cell is selected", async () => {
    const sheet = await session.addSheet();
    await session.type('=SPARE.LOADFOR("80kg",5)');
    await session.shows(sheet, "A1").toBe("#VALUE!");
    await session.says().toBe("");
    await session.page.keyboard.press("ArrowUp");
    await session.says().toMatch(/^oneRepMax is text, "80kg"/);

    await session.type("=SPARE.LOADFOR(80,5)", "Control+Enter");
    await session.says().toBe("");

    // Of a range it is the sheet's own cell, not the range's row.
    await session.page.keyboard.press("Enter");
    for (const load of ["100", "80kg"]) await session.type(load);
    await session.type("=SPARE.VOLUMELOAD(A2:A3,5)", "Control+Enter");
    await session.says().toMatch(/^load in A3 is text, "80kg"/);
  });

  it("asks for no frames while nothing changes, copied cells or not, and draws what does", async () => {
    const { page } = session;
    await session.addSheet();
    await session.type("copied");
    await session.go("A1");
    await page.keyboard.press("Control+C");
    const framesInASecond = () =>
      page.evaluate(
        () =>
          new Promise<number>((resolve) => {
            const ask = window.requestAnimationFrame;
            let asked = 0;
            window.requestAnimationFrame = (draw) => {
              asked += 1;
              return ask(draw);
            };
            setTimeout(() => {
              window.requestAnimationFrame = ask;
              resolve(asked);
            }, 1000);
          }),
      );
    // A caret blinks.
    await expect.poll(framesInASecond).toBeLessThan(8);

    const cells = page.locator("canvas[id^=univer-sheet-main]");
    const looks = async () => (await cells.screenshot()).toString("base64");
    const empty = await looks();
    await session.fill("C3", [["drawn"]]);
    await expect.poll(looks).not.toBe(empty);
    const filled = await looks();
    await page.mouse.move(400, 400);
    await page.mouse.wheel(0, 300);
    await expect.poll(looks).not.toBe(filled);
  });

  it("leaves its toolbar alone while one moves and types", async () => {
    const { page } = session;
    await session.addSheet();
    const toolbar = await page.evaluateHandle(() => {
      const change = { count: 0 };
      const place = document.querySelector("[data-u-comp=ribbon-toolbar]")!.closest("header")!;
      new MutationObserver((changes) => (change.count += changes.length)).observe(place, {
        childList: true,
        subtree: true,
        attributeFilter: ["class"],
      });
      return change;
    });
    const changesOf = async (keys: readonly string[]) => {
      await session.drawn();
      await toolbar.evaluate((change) => (change.count = 0));
      for (const key of keys) {
        await page.keyboard.press(key);
        await session.drawn();
      }
      await session.drawn();
      return toolbar.evaluate((change) => change.count);
    };

    await expect.poll(() => changesOf(["ArrowDown", "ArrowDown", "ArrowUp"])).toBe(0);
    // What cannot be done to a text that is being typed turns grey, once.
    expect(await changesOf(["t"])).toBeGreaterThan(0);
    await expect.poll(() => changesOf([..."yped"])).toBe(0);
    await page.keyboard.press("Escape");
  });

  it("asks no address but its own, and breaks none of its own rules, whatever is done in it", async () => {
    const { page, requests, complaints } = session;
    await page.getByText("Before anybody lifts").first().click();
    await page.getByRole("listitem").filter({ hasText: "not a clearance to lift" }).waitFor();

    const origins = new Set(requests.map((address) => new URL(address).origin));
    expect([...origins]).toEqual([new URL(home).origin]);
    expect(requests.length).toBeGreaterThan(3);
    expect(complaints).toEqual([]);
  });

  it("carries its content security policy in the page and in the answer's header", async () => {
    const response = await fetch(home);
    expect(response.headers.get("Content-Security-Policy")).toContain(CONTENT_SECURITY_POLICY);
    expect(await response.text()).toContain(`content="${CONTENT_SECURITY_POLICY}"`);
    expect(CONTENT_SECURITY_POLICY).toContain("script-src 'self';");

    // Run from a timer, as the page's own code would: what a test runs directly is let through.
    const evaluated = await session.page.evaluate(
      () =>
        new Promise<string>((resolve) => {
          setTimeout(() => {
            try {
              resolve(String(Function("return 'ran'")()));
            } catch (error) {
              resolve(String(error));
            }
          });
        }),
    );
    expect(evaluated).toMatch(/Content Security Policy/);
  });

  it("takes the next key into the cells of a sheet whose tab was pressed, and of a new workbook", async () => {
    const first = await session.addSheet();
    await session.addSheet();
    const tabs = session.page.locator("[data-u-comp=slide-tab-bar]");
    await tabs.getByText(first, { exact: true }).click();
    await expect.poll(session.inSight).toBe(first);
    await session.type("22");
    await session.shows(first, "A1").toBe(22);

    await session.begin();
    await session.name().toMatch(/^Workbook/);
    await session.type("11");
    await session.shows("Sheet1", "A1").toBe(11);
  });
});
