import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { ICellData } from "@univerjs/core";
import { afterEach, describe, expect, it } from "vitest";
import { cellAddress } from "../../../src/formula/address";
import { readDemo } from "../../../src/tools/demo";
import { layOutSheet, type SheetFile } from "../../../src/readySheets";
import { loneSheetData } from "../../../src/engine/data/readySheets";
import { named } from "../../present";
import { computedDemo } from "../../theDemo";

const folders: string[] = [];
afterEach(() => folders.splice(0).forEach((folder) => rmSync(folder, { recursive: true })));

/** Reads a demo of one sheet from files, as the real one is read. */
function readSheet(sheet: Omit<SheetFile, "name">, files: Record<string, string> = {}) {
  const folder = mkdtempSync(join(tmpdir(), "demo-"));
  folders.push(folder);
  mkdirSync(join(folder, "sheets"));
  const look = {
    colors: { accent: "#123456" },
    styles: {
      base: { font: "Arial", size: 11 },
      bold: { bold: true },
      big: { size: 20, color: "accent" },
      date: { format: "d mmm" },
    },
  };
  const workbook = { name: "Test", look: "look.json", sheets: ["one"] };
  writeFileSync(join(folder, "look.json"), JSON.stringify(look));
  writeFileSync(join(folder, "workbook.json"), JSON.stringify(workbook));
  writeFileSync(join(folder, "sheets", "one.json"), JSON.stringify({ name: "One", ...sheet }));
  for (const [name, text] of Object.entries(files)) {
    writeFileSync(join(folder, "sheets", name), text);
  }
  const data = readDemo(folder);
  const read = named(data.sheets, "one");
  return {
    sheet: read,
    cell: (row: number, column: number): ICellData => read.cellData?.[row]?.[column] ?? {},
    style: (row: number, column: number) =>
      data.styles[String(read.cellData?.[row]?.[column]?.s)] ?? undefined,
  };
}

describe("the demo's contents", () => {
  it("are single cells, rows and blocks, each from its address on", () => {
    const { cell } = readSheet({
      cells: {
        B1: "one",
        A2: ["a", 2, null, true],
        C4: [
          [1, 2],
          [3, 4],
        ],
      },
    });
    expect(cell(0, 1).v).toBe("one");
    expect([cell(1, 0).v, cell(1, 1).v, cell(1, 2).v, cell(1, 3).v]).toEqual([
      "a",
      2,
      undefined,
      1,
    ]);
    expect([cell(3, 2).v, cell(3, 3).v, cell(4, 2).v, cell(4, 3).v]).toEqual([1, 2, 3, 4]);
  });

  it("are formulas after an equals sign, dates where they look like one, and text after an apostrophe", () => {
    const { cell } = readSheet({
      cells: { A1: "=SUM(B1:B2)", A2: "2026-01-05", A3: "'=SUM(B1:B2)", A4: "'2026-01-05" },
    });
    expect(cell(0, 0)).toMatchObject({ f: "=SUM(B1:B2)" });
    // The serial number that Excel shows for 5 January 2026 in a cell with a number format.
    expect(cell(1, 0).v).toBe(46027);
    expect(cell(2, 0)).toMatchObject({ v: "=SUM(B1:B2)" });
    expect(cell(2, 0).f).toBeUndefined();
    expect(cell(3, 0).v).toBe("2026-01-05");
  });

  it("come from CSV files, numbers and dates as such, nothing as a blank", () => {
    const { cell } = readSheet(
      { csv: { A2: "log.csv" } },
      { "log.csv": 'date,lift,load\n2026-01-05,"Squat, high bar",102.5\n2026-01-06,,-3\n' },
    );
    expect([cell(1, 0).v, cell(1, 2).v]).toEqual(["date", "load"]);
    expect([cell(2, 0).v, cell(2, 1).v, cell(2, 2).v]).toEqual([46027, "Squat, high bar", 102.5]);
    expect([cell(3, 1).v, cell(3, 2).v]).toEqual([undefined, -3]);
  });

  it("fill a range with a formula, moving what is not pinned", () => {
    const { cell } = readSheet({ fill: { "C2:D4": "=A2*$B$1+SPARE.E1RM(A2,$B2)" } });
    expect(cell(1, 2).f).toBe("=A2*$B$1+SPARE.E1RM(A2,$B2)");
    expect(cell(3, 2).f).toBe("=A4*$B$1+SPARE.E1RM(A4,$B4)");
    expect(cell(1, 3).f).toBe("=B2*$B$1+SPARE.E1RM(B2,$B2)");
  });
});

describe("the demo's looks", () => {
  it("add one style to another, over the base", () => {
    const { style } = readSheet({
      cells: { A1: "x", B1: "y" },
      style: { A1: "bold big", A: "date" },
    });
    expect(style(0, 0)).toEqual({
      ff: "Arial",
      fs: 20,
      bl: 1,
      cl: { rgb: "#123456" },
      n: { pattern: "d mmm" },
    });
    expect(style(0, 1)).toEqual({ ff: "Arial", fs: 11 });
  });

  it("reach blank cells of a range, and whole columns as far as there is content", () => {
    const { style } = readSheet({ cells: { A3: 1 }, style: { "B1:C2": "bold", D: "bold" } });
    expect(style(1, 2)?.bl).toBe(1);
    expect(style(2, 3)?.bl).toBe(1);
    expect(style(3, 3)).toBeUndefined();
  });

  it("set widths, heights, merged cells, gridlines and what does not scroll", () => {
    const { sheet } = readSheet({
      widths: { A: 120, "C:D": 70 },
      heights: { "1": 40 },
      merge: ["A1:C1"],
      gridlines: false,
      freeze: "B4",
      tab: "accent",
    });
    expect(sheet.columnData).toEqual({ 0: { w: 120 }, 2: { w: 70 }, 3: { w: 70 } });
    expect(sheet.rowData).toEqual({ 0: { h: 40, ia: 0 } });
    expect(sheet.mergeData).toEqual([{ startRow: 0, endRow: 0, startColumn: 0, endColumn: 2 }]);
    expect(sheet.showGridlines).toBe(0);
    expect(sheet.freeze).toEqual({ xSplit: 1, ySplit: 3, startRow: 3, startColumn: 1 });
    expect(sheet.tabColor).toBe("#123456");
  });

  it("name the style or colour that is not defined", () => {
    expect(() => readSheet({ cells: { A1: 1 }, style: { A1: "fancy" } })).toThrow(/"fancy"/);
    expect(() => readSheet({ tab: "mauve" })).toThrow(/"mauve"/);
  });
});

describe("a sheet for a workbook that is open", () => {
  it("brings the looks of its cells along, for the workbook has styles of its own", () => {
    const { cellData } = loneSheetData(
      layOutSheet(
        { name: "One", cells: { A1: ["x", true] }, style: { A1: "heading", B1: "heading plain" } },
        {
          colors: { accent: "#123456", line: "#cccccc" },
          styles: {
            base: { font: "Arial", size: 11 },
            heading: { bold: true, color: "accent", bottom: "line", align: "center", wrap: true },
            plain: { bold: false, wrap: false, indent: 8 },
          },
        },
        () => [],
      ),
    );
    expect(cellData![0]![0]).toEqual({
      v: "x",
      t: 1,
      s: {
        ff: "Arial",
        fs: 11,
        bl: 1,
        cl: { rgb: "#123456" },
        bd: { b: { s: 1, cl: { rgb: "#cccccc" } } },
        ht: 2,
        tb: 3,
      },
    });
    // What takes back the style beneath is said, too.
    expect(cellData![0]![1]).toMatchObject({ v: 1, t: 3, s: { bl: 0, tb: 1, pd: { l: 8 } } });
  });
});

describe("the demo itself", () => {
  it("computes every formula; an error it shows on purpose is one of ours and says why", async () => {
    const data = readDemo();
    const book = await computedDemo();
    const cells = Object.values(data.sheets).flatMap(({ name, rowCount, columnCount, cellData }) =>
      Array.from({ length: rowCount! * columnCount! }, (_, index) => {
        const row = Math.floor(index / columnCount!);
        const column = index % columnCount!;
        const address = cellAddress(row, column);
        return { name: name!, address, formula: cellData?.[row]?.[column]?.f };
      }),
    );
    const formulas = cells.filter(({ formula }) => formula);
    expect(formulas.length).toBeGreaterThan(0);
    expect(formulas.filter(({ name, address }) => book.read(name, address) === null)).toEqual([]);
    const errors = cells.filter(({ name, address }) =>
      String(book.read(name, address)).startsWith("#"),
    );
    expect(errors.filter(({ name, address }) => !book.message(name, address))).toEqual([]);
  });
});
