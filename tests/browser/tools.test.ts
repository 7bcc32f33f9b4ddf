import { beforeEach, expect, it } from "vitest";
import { readPackage, readWorkbook } from "../../src/xlsx";
import { buildBook } from "../cli/support";
import { violations } from "./accessibility";
import { describeInBrowser, home, joinBrowser } from "./browser";
import { openForAll } from "./openForAll";
import type { PageSession } from "./pageSession";
import { firstSheet, openPage } from "./pageSession";

describeInBrowser("the spreadsheet's own tools", () => {
  let session: PageSession;
  let sheet: string;

  openForAll(async () => {
    session = await openPage(await joinBrowser(), home, { demo: firstSheet });
  });

  beforeEach(async () => {
    sheet = await session.addSheet();
  });

  const command = (id: string, params: object = {}) =>
    session.page.evaluate(async ([name, given]) => window.spare!.api.executeCommand(name, given), [
      id,
      params,
    ] as const);

  const fillColumn = (...cells: readonly (string | number)[]) =>
    session.fill(
      "A1",
      cells.map((cell) => [cell]),
    );

  const shownRows = (until: number) =>
    session.page.evaluate((last) => {
      const active = window.spare!.api.getActiveWorkbook()!.getActiveSheet().getSheet();
      return Array.from({ length: last }, (_, row) => row + 1).filter((row) =>
        active.getRowVisible(row - 1),
      );
    }, until);

  const isFiltered = () =>
    session.page.evaluate(
      () => window.spare!.api.getActiveWorkbook()!.getActiveSheet().getFilter() !== null,
    );

  async function openFile(name: string, bytes: Uint8Array): Promise<void> {
    await session.openFile({ name, bytes });
    await session.says().toContain(`${name} is open.`);
  }

  it("have names, in the page and in their dialogs, so that the accessibility checker has nothing to say", async () => {
    const { page } = session;
    // Asked for at once, seconds before the spreadsheet has its finder ready.
    await page.keyboard.press("Control+H");
    await page.getByRole("button", { name: "Replace All" }).waitFor();
    await expect.poll(() => violations(page)).toEqual([]);
    await page.keyboard.press("Escape");
    expect(await violations(page)).toEqual([]);
    await page.locator(".library-button").click();
    await page.getByRole("button", { name: "New", exact: true }).waitFor();
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press("Escape");
  });

  it("find with Ctrl+F, and replace with Ctrl+H", async () => {
    const { page } = session;
    await fillColumn("squat", "bench", "squat jump", "row");
    await page.keyboard.press("Control+F");
    await page.getByPlaceholder("Find in this Sheet").fill("squat");
    await page.keyboard.press("Enter");
    const dialog = page.getByRole("dialog");
    await expect.poll(() => dialog.textContent()).toMatch(/[12]\s*\/\s*2/);
    await page.keyboard.press("Escape");

    await page.keyboard.press("Control+H");
    await page.getByPlaceholder("Find in this Sheet").fill("jump");
    await page.getByPlaceholder("Input Replace String").fill("hop");
    await page.getByRole("button", { name: "Find", exact: true }).click();
    await expect.poll(() => dialog.textContent()).toMatch(/1\s*\/\s*1/);
    await page.getByRole("button", { name: "Replace All" }).click();
    await page.getByRole("button", { name: "OK", exact: true }).click();
    await session.shows(sheet, "A3").toBe("squat hop");
    expect(await session.read(sheet, "A1")).toBe("squat");
    await page.keyboard.press("Escape");
  });

  it("list functions by name, where Enter chooses from the list and past it ends the formula", async () => {
    const { page } = session;
    await session.type("115");
    const listed = page.locator("li", { hasText: "SPARE.E1RMBAND" });
    await page.keyboard.type("=SPARE.E1RMB");
    await listed.waitFor();
    await page.keyboard.press("Enter");
    // Without a pause: the first argument stands behind the name, whenever the list goes away.
    await page.keyboard.type("A1,1,2)");
    await page.keyboard.press("Enter");
    await session.shows(sheet, "A2").toBeCloseTo(122.67);

    await session.go("A3");
    await page.keyboard.type("=SPARE.E1RM");
    await listed.waitFor();
    await page.keyboard.type("(A1,1)");
    await page.keyboard.press("Enter");
    await page.keyboard.type("next");
    await page.keyboard.press("Enter");
    await session.shows(sheet, "A3").toBe(115);
    await session.shows(sheet, "A4").toBe("next");
  });

  it("sort a range, formulas along with their rows", async () => {
    await fillColumn(90, 140, 115);
    await session.fill("B1", [["=SPARE.E1RM(A1,1)"], ["=SPARE.E1RM(A2,1)"], ["=SPARE.E1RM(A3,1)"]]);
    await session.shows(sheet, "B3").toBe(115);
    await session.go("A1:B3");
    await command("sheet.command.sort-range-asc");
    await session.shows(sheet, "A3").toBe(140);
    expect([await session.read(sheet, "A1"), await session.read(sheet, "A2")]).toEqual([90, 115]);
    await session.shows(sheet, "B3").toBe(140);
    expect(await session.read(sheet, "B2")).toBe(115);
  });

  it("fill past the edge, as far as the pointer is dragged", async () => {
    const { page } = session;
    await fillColumn(1, 2);
    await session.go("A1:A2");
    await page.evaluate(() =>
      window.spare!.api.getActiveWorkbook()!.getActiveSheet().setRowCount(60),
    );
    const box = (await page.locator("canvas[id^=univer-sheet-main]").boundingBox())!;
    // The handle is at the selection's corner, beside and below the headings.
    const corner = await page.evaluate(() => {
      const active = window.spare!.api.getActiveWorkbook()!.getActiveSheet();
      return {
        x: 46 + active.getColumnWidth(0),
        y: 20 + active.getRowHeight(0) + active.getRowHeight(1),
      };
    });
    await session.drawn();
    await page.mouse.move(box.x + corner.x - 1, box.y + corner.y - 1);
    await page.mouse.down();
    await page.mouse.move(box.x + corner.x - 20, box.y + box.height - 60, { steps: 5 });
    await page.mouse.move(box.x + corner.x - 20, box.y + box.height + 30, { steps: 5 });
    await expect.poll(session.firstRow).toBeGreaterThan(60);
    await page.mouse.up();
    await session.shows(sheet, "A70").toBe(70);
  });

  it("filter rows, and the filter is kept in the file", async () => {
    await session.choose("New");
    await session.name().toMatch(/^Workbook/);
    await fillColumn("lift", "squat", "bench", "row", "squat");
    await session.go("A1:A5");
    await session.page.keyboard.press("Control+Shift+L");
    await expect.poll(isFiltered).toBe(true);
    const place = await session.page.evaluate(() => {
      const workbook = window.spare!.api.getActiveWorkbook()!;
      return { unitId: workbook.getId(), subUnitId: workbook.getActiveSheet().getSheetId() };
    });
    const criteria = { colId: 0, filters: { filters: ["squat"] } };
    await command("sheet.command.set-filter-criteria", { ...place, col: 0, criteria });
    await expect.poll(() => shownRows(5)).toEqual([1, 2, 5]);

    const { bytes: saved } = await session.save();
    await session.says().toMatch(/was saved/);
    expect(await session.page.locator("#message").textContent()).not.toContain("without");
    expect(readWorkbook(readPackage(saved)).sheets[0]!.filter).toEqual({
      area: { startRow: 0, startColumn: 0, endRow: 4, endColumn: 0 },
      columns: [{ column: 0, texts: { shown: ["squat"], blank: false } }],
    });
    await openFile("filtered.xlsx", saved);
    await expect.poll(() => shownRows(5)).toEqual([1, 2, 5]);
    await command("sheet.command.smart-toggle-filter");
    await expect.poll(() => shownRows(5)).toEqual([1, 2, 3, 4, 5]);
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
