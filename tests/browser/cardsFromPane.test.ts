import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { strFromU8, unzipSync } from "fflate";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it, vi } from "vitest";
import { implementations } from "../../src/functions/implementations";
import { cardInFragment } from "../../src/cards/link";
import { describeInBrowser, home, joinBrowser } from "./browser";
import { codesOnPaper, hasPoppler } from "./printedCodes";

const patience = 60_000;
vi.setConfig({ testTimeout: 3 * patience });

/** What LOADCHART gives in a cell, without its headings, as text. */
const chartInSheet = (oneRepMax: unknown, equation: unknown) =>
  implementations
    .LOADCHART(oneRepMax, null, null, 2.5, equation)
    .slice(1)
    .map((line) => line.map(String));

describeInBrowser("the demo squad's cards", () => {
  let browser: Browser;
  let page: Page;
  let folder: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "squad-"));
    browser = await joinBrowser();
    page = await browser.newPage({ viewport: { width: 1440, height: 900 }, acceptDownloads: true });
    await page.goto(home);
    await page.waitForFunction(() => window.spare !== undefined, null, { timeout: patience });
    await page.locator("[data-u-comp=slide-tab-item]", { hasText: /^Cards$/ }).click();
    await page.locator(".spare-pane").getByRole("tab", { name: "Cards" }).click();
  }, 3 * patience);

  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true });
  });

  const cell = (address: string) =>
    page.evaluate((at) => window.spare!.readCell("Cards", at), address);
  const made = async (button: string): Promise<Buffer> => {
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: button }).click(),
    ]);
    // The browser may be shared, and then its own copy is out of reach.
    const copy = join(folder, download.suggestedFilename());
    await download.saveAs(copy);
    return readFileSync(copy);
  };

  it("are read from the sheet in sight, whatever cell is selected", async () => {
    await page.getByRole("button", { name: "Read the cells" }).click();
    await expect.poll(() => page.textContent(".cards .notice")).toContain("can read the lifter");
    expect(await page.locator(".spare-pane .cards select option").count()).toBe(1 + 14);
    await page.getByLabel("Address of the card page").fill("https://squad.example/card/");
  });

  it("open as files without a network, and show every load that the sheet shows", async () => {
    const files = unzipSync(new Uint8Array(await made("Save as files")));
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
    for (const [at, [name, bytes]] of Object.entries(files).entries()) {
      writeFileSync(join(folder, name), strFromU8(bytes));
      await card.goto(pathToFileURL(join(folder, name)).href);
      const row = 14 + at;
      expect(await card.textContent("h1")).toBe(await cell(`B${row}`));
      const planned = await card.locator(".planned strong").allTextContents();
      const sheet = await Promise.all(Object.keys(today).map((column) => cell(`${column}${row}`)));
      expect(planned).toEqual(sheet.map((load) => `${String(load)} kg`));
      for (const [column, lift] of Object.entries(maxima)) {
        await card.tap(`.lifts button >> text="${lift}"`);
        const oneRepMax = await cell(`${column}${row}`);
        expect(await card.textContent(".maximum strong")).toBe(`${String(oneRepMax)} kg`);
        const shown = await card.$$eval("tbody tr", (rows) =>
          rows.map((line) => [...line.children].map((each) => each.textContent)),
        );
        const equation = (await cell(`C${row}`)) ?? "epley";
        expect(shown).toEqual(chartInSheet(oneRepMax, equation));
      }
    }
    await phone.close();
  });

  it.skipIf(!hasPoppler)("print four on a page, each with its own code", async () => {
    const html = strFromU8(new Uint8Array(await made("Save a page to print")));
    const pages = await codesOnPaper(browser, html);
    expect(pages.map((codes) => codes.length)).toEqual([4, 4, 4, 2]);
    const names = pages.flat().map((link) => cardInFragment(new URL(link).hash).name);
    const squad = await Promise.all(names.map((_name, at) => cell(`B${14 + at}`)));
    expect(names).toEqual(squad);
  });
});
