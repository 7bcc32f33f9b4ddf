import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, beforeEach, expect, it, vi } from "vitest";
import { readPackage, readWorkbook } from "../../src/xlsx";
import { buildBook } from "../cli/support";
import { violations } from "./accessibility";
import { describeInBrowser, home, joinBrowser } from "./browser";
import type { PageSession } from "./pageSession";
import { openPage, patience } from "./pageSession";

vi.setConfig({ testTimeout: 3 * patience });

describeInBrowser("the spreadsheet's own tools", () => {
  let browser: Browser;
  let session: PageSession;
  let sheet: string;
  let folder: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "tools-"));
    browser = await joinBrowser();
    session = await openPage(browser, home);
  }, patience);

  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true });
  });

  beforeEach(async () => {
    sheet = await session.addSheet();
  });

  const command = (id: string, params: object = {}) =>
    session.page.evaluate(async ([name, given]) => window.spare!.api.executeCommand(name, given), [
      id,
      params,
    ] as const);

  async function typeColumn(...cells: readonly string[]) {
    await session.go("A1");
    for (const cell of cells) await session.type(cell);
    await session.shows(sheet, `A${cells.length}`).not.toBeNull();
  }

  const select = (address: string) =>
    session.page.evaluate((at) => {
      window.spare!.api.getActiveWorkbook()!.getActiveSheet().getRange(at).activate();
    }, address);

  const shownRows = (until: number) =>
    session.page.evaluate((last) => {
      const active = window.spare!.api.getActiveWorkbook()!.getActiveSheet().getSheet();
      return Array.from({ length: last }, (_, row) => row + 1).filter((row) =>
        active.getRowVisible(row - 1),
      );
    }, until);

  async function openFile(name: string, bytes: Uint8Array): Promise<void> {
    const { page } = session;
    const choosing = page.waitForEvent("filechooser");
    await page.getByRole("button", { name: "Open", exact: true }).click();
    await (await choosing).setFiles({ name, mimeType: "", buffer: Buffer.from(bytes) });
    await session.says().toContain(`${name} is open.`);
  }

  async function savedFile(): Promise<Uint8Array> {
    const downloading = session.page.waitForEvent("download");
    await session.page.keyboard.press("Control+S");
    const path = join(folder, "saved.xlsx");
    await (await downloading).saveAs(path);
    return new Uint8Array(readFileSync(path));
  }

  it("have names, in the page and in their dialogs, so that the accessibility checker has nothing to say", async () => {
    const { page } = session;
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press("Control+H");
    await page.getByRole("button", { name: "Replace All" }).waitFor();
    await expect.poll(() => violations(page), { timeout: patience }).toEqual([]);
    await page.keyboard.press("Escape");
    await page.locator(".library-button").click();
    await page.getByRole("button", { name: "New", exact: true }).waitFor();
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press("Escape");
  });

  it("sort a range, formulas along with their rows", async () => {
    await typeColumn("90", "140", "115");
    await session.go("B1");
    for (const row of [1, 2, 3]) await session.type(`=SPARE.E1RM(A${row},1)`);
    await session.shows(sheet, "B3").toBe(115);
    await select("A1:B3");
    await command("sheet.command.sort-range-asc");
    await session.shows(sheet, "A3").toBe(140);
    expect([await session.read(sheet, "A1"), await session.read(sheet, "A2")]).toEqual([90, 115]);
    await session.shows(sheet, "B3").toBe(140);
    expect(await session.read(sheet, "B2")).toBe(115);
  });

  it("filter rows, and the filter is kept in the file", async () => {
    await session.page.locator(".library-button").click();
    await session.page.getByRole("button", { name: "New", exact: true }).click();
    await session.shows("Sheet1", "A1").toBeNull();
    sheet = "Sheet1";
    await typeColumn("lift", "squat", "bench", "row", "squat");
    await select("A1:A5");
    await session.page.keyboard.press("Control+Shift+L");
    const place = await session.page.evaluate(() => {
      const workbook = window.spare!.api.getActiveWorkbook()!;
      return { unitId: workbook.getId(), subUnitId: workbook.getActiveSheet().getSheetId() };
    });
    const criteria = { colId: 0, filters: { filters: ["squat"] } };
    await command("sheet.command.set-filter-criteria", { ...place, col: 0, criteria });
    await expect.poll(() => shownRows(5), { timeout: patience }).toEqual([1, 2, 5]);

    const saved = await savedFile();
    await session.says().toMatch(/was saved/);
    expect(await session.page.locator("#message").textContent()).not.toContain("without");
    expect(readWorkbook(readPackage(saved)).sheets[0]!.filter).toEqual({
      area: { startRow: 0, startColumn: 0, endRow: 4, endColumn: 0 },
      columns: [{ column: 0, texts: { shown: ["squat"], blank: false } }],
    });
    await openFile("filtered.xlsx", saved);
    await expect.poll(() => shownRows(5), { timeout: patience }).toEqual([1, 2, 5]);
    await command("sheet.command.smart-toggle-filter");
    await expect.poll(() => shownRows(5), { timeout: patience }).toEqual([1, 2, 3, 4, 5]);
  });

  it("compute all but what is in a circle, whose cells and names are said", async () => {
    const cell = (address: string, formula: string) => `<c r="${address}"><f>${formula}</f></c>`;
    const cells = [
      `<c r="A1"><v>100</v></c>`,
      cell("B1", "_xldudf_SPARE_E1RM(A1,5)"),
      cell("C1", "D1+1"),
      cell("D1", "C1+1"),
      cell("E1", "Up+1"),
    ];
    const names =
      '<definedName name="Up">Down+1</definedName><definedName name="Down">Up+1</definedName>';
    const book = buildBook({
      sheets: { Log: `<row r="1">${cells.join("")}</row>` },
      workbook: `<definedNames>${names}</definedNames>`,
    });
    await openFile("circles.xlsx", book);
    const said = (await session.page.locator("#message").textContent())!;
    expect(said).toMatch(/Log!(C1 and Log!D1|D1 and Log!C1) read their own results/);
    expect(said).toContain("the names Up and Down stand for themselves");
    await session.shows("Log", "B1").toBeCloseTo(116.6667, 3);
    await session.go("A1");
    await session.type("120");
    await session.shows("Log", "B1").toBe(140);

    await session.go("F1");
    await session.type("=G1+1", "Tab");
    await session.type("=F1+1");
    await session.says().toContain("Log!F1");
  });
});
