import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { strFromU8, unzipSync } from "fflate";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeEach, expect, it } from "vitest";
import { implementations } from "../../src/functions/implementations";
import { cardInFragment } from "../../src/cards/link";
import { zip } from "../../src/core/zip";
import { describeInBrowser, home, joinBrowser } from "./browser";
import { openForAll } from "./openForAll";
import type { PageSession } from "./pageSession";
import { openPage } from "./pageSession";
import { codesOnPaper, hasPoppler } from "./printedCodes";

/** What LOADCHART gives in a cell, without its headings, as text. */
const chartInSheet = (oneRepMax: unknown, equation: unknown) =>
  implementations
    .LOADCHART(oneRepMax, null, null, 2.5, equation)
    .slice(1)
    .map((line) => line.map(String));

describeInBrowser("the demo squad's cards", () => {
  let browser: Browser;
  let session: PageSession;
  let page: Page;
  const folder = mkdtempSync(join(tmpdir(), "squad-"));
  afterAll(() => rmSync(folder, { recursive: true }));

  openForAll(async () => {
    browser = await joinBrowser();
    // The cards, and what they read.
    const demo = ["Percentages", "Squad plan", "Cards"];
    session = await openPage(browser, home, { demo });
    ({ page } = session);
  });

  beforeEach(async () => {
    await page.locator("[data-u-comp=slide-tab-item]", { hasText: /^Cards$/ }).click();
    await session.shows("Cards", "I14").toEqual(expect.any(Number));
    await page.locator(".spare-pane").getByRole("tab", { name: "Cards" }).click();
    await page.getByRole("button", { name: "Read the cells" }).click();
    await page.getByLabel("Address of the card page").fill("https://squad.example/card/");
  });

  /** What the sheet holds from the first lifter's row on, a lifter a line: each column by its letter. */
  const squad = () =>
    page.evaluate(() =>
      Array.from({ length: 14 }, (_, at) =>
        Object.fromEntries(
          [..."BCDEFGHIJK"].map((column) => [
            column,
            window.spare!.readCell("Cards", `${column}${14 + at}`),
          ]),
        ),
      ),
    );

  it("are read from the sheet in sight, whatever cell is selected", async () => {
    await expect.poll(() => page.textContent(".cards .notice")).toContain("can read the lifter");
    expect(await page.locator(".spare-pane .cards select option").count()).toBe(1 + 14);
  });

  it("open as files without a network, and show every load that the sheet shows", async () => {
    const files = unzipSync((await session.save("Save as files")).bytes);
    expect(Object.keys(files)).toHaveLength(14);
    const phone = await browser.newContext({
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
      offline: true,
    });
    const card = await phone.newPage();
    const today = { I: "Back squat", J: "Bench pull", K: "Bench press" };
    const maxima = { D: "Back squat", E: "Deadlift", F: "Bench pull", G: "Bench press" };
    for (const [[name, bytes], cells] of zip(Object.entries(files), await squad())) {
      writeFileSync(join(folder, name), strFromU8(bytes));
      await card.goto(pathToFileURL(join(folder, name)).href);
      expect(await card.textContent("h1")).toBe(cells.B);
      const planned = await card.locator(".planned strong").allTextContents();
      expect(planned).toEqual(Object.keys(today).map((column) => `${String(cells[column])} kg`));
      for (const [column, lift] of Object.entries(maxima)) {
        await card.tap(`.lifts button >> text="${lift}"`);
        const oneRepMax = cells[column];
        expect(await card.textContent(".maximum strong")).toBe(`${String(oneRepMax)} kg`);
        const shown = await card.$$eval("tbody tr", (rows) =>
          rows.map((line) => [...line.children].map((each) => each.textContent)),
        );
        expect(shown).toEqual(chartInSheet(oneRepMax, cells.C ?? "epley"));
      }
    }
    await phone.close();
  });

  it.skipIf(!hasPoppler)("print four on a page, each with its own code", async () => {
    const html = strFromU8((await session.save("Save a page to print")).bytes);
    const pages = await codesOnPaper(browser, html);
    expect(pages.map((codes) => codes.length)).toEqual([4, 4, 4, 2]);
    const names = pages.flat().map((link) => cardInFragment(new URL(link).hash).name);
    expect(names).toEqual((await squad()).map(({ B }) => B));
  });
});
