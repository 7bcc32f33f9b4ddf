import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import type { IWorkbookData } from "@univerjs/core";
import ExcelJS from "exceljs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readMetadata } from "../../../src/tools/catalogue";
import { implementations } from "../../../src/functions/implementations";
import { openWorkbook } from "../../../src/engine/headless";
import { convert, hasLibreOffice } from "../../libreOffice";
import { demoBytes } from "../../theDemo";
import { hasValidator, validateFile } from "../../validator";
import { readPackage } from "../../../src/xlsx";
import { textAt } from "../../../src/xlsx/package";
import { files } from "../../xlsx/support";
import { cellsOf, lookInto, openFile, readData, sheetAt, writeData } from "./support";

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "workbooks-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Computes a workbook and writes it as a file. */
async function write(data: IWorkbookData): Promise<Uint8Array> {
  const book = await openWorkbook(data, readMetadata(), implementations);
  try {
    return writeData(book);
  } finally {
    book.close();
  }
}

function onDisk(name: string, bytes: Uint8Array): string {
  const path = join(folder, `${name}.xlsx`);
  writeFileSync(path, bytes);
  return path;
}

/** A workbook of one sheet, "Log", its cells by row. */
function bookOf(rows: Record<number, Record<number, object>>, more: object = {}): IWorkbookData {
  const sheet = { id: "one", name: "Log", rowCount: 50, columnCount: 20, cellData: rows, ...more };
  return {
    id: "book",
    name: "Book",
    appVersion: "",
    locale: "enUS" as IWorkbookData["locale"],
    styles: { red: { bg: { rgb: "rgb(255, 0, 0)" }, n: { pattern: '0.0" kg"' } } },
    sheetOrder: ["one"],
    sheets: { one: sheet },
  };
}

/** The first sheet's XML, without which look each cell has. */
const sheetXml = (bytes: Uint8Array) =>
  textAt(readPackage(bytes), "xl/worksheets/sheet1.xml").replace(/ s="\d+"/g, "");

describe("a workbook that was opened, computed and written", () => {
  it.skipIf(!hasValidator).each(files)("passes the validator: %s", async (name) => {
    const path = onDisk(name, await write(openFile(name)));
    expect(validateFile(path)).toMatchObject({ ok: true, errors: [] });
  });

  it.each(files)("is the same workbook when it is opened again: %s", async (name) => {
    const before = openFile(name);
    const after = readData(await write(before));
    for (const [index, id] of before.sheetOrder.entries()) {
      const one = sheetAt(before, index);
      const other = sheetAt(after, index);
      expect(other.name).toBe(one.name);
      expect(other.hidden).toBe(one.hidden);
      expect(other.freeze).toEqual(one.freeze);
      expect(other.mergeData).toEqual(one.mergeData);
      expect(other.showGridlines).toBe(one.showGridlines);
      expect(shapeOf(after, other.id ?? "")).toEqual(shapeOf(before, id));
    }
  });

  /** What is in the cells that hold something, and how it looks; what formulas computed aside. */
  function shapeOf(data: IWorkbookData, id: string) {
    return cellsOf(data, id)
      .filter(({ cell }) => cell.f !== undefined || cell.v !== undefined)
      .map(({ row, column, cell }) => {
        // A formula that has no number format takes that of the cells it reads.
        const { n, ...look } = data.styles[String(cell.s)] ?? {};
        const typed = cell.f ? {} : { type: cell.t, n };
        return { row, column, content: cell.f ?? cell.v, look, ...typed };
      });
  }

  it("can be read by a program that is not ours", async () => {
    const path = onDisk("for-exceljs", await write(openFile("xlsxwriter")));
    const book = new ExcelJS.Workbook();
    await book.xlsx.readFile(path);
    const log = book.getWorksheet("Week 1's log")!;
    expect(log.getCell("G3").value).toMatchObject({ formula: "SUM($C$2:$C$4)", result: 13 });
    expect(log.getCell("A2").value).toEqual(new Date(Date.UTC(2026, 0, 5)));
    expect(log.getCell("F1").fill).toMatchObject({ fgColor: { argb: "FF1F6B63" } });
    expect(log.getColumn(1).width).toBeCloseTo(14.71, 2);
    expect(log.views[0]).toMatchObject({ state: "frozen", xSplit: 1, ySplit: 1 });
    expect(book.getWorksheet("Two")!.state).toBe("hidden");
  });
});

describe("a formula", () => {
  it("of ours is in the spelling of files, marked so that it spills, with its values cached", async () => {
    const xml = sheetXml(await write(openFile("xlsxwriter")));
    expect(xml).toContain(
      '<c r="F3" cm="1"><f t="array" ref="F3:F5">' +
        "_xldudf_SPARE_E1RM($B$2:$B$4,$C$2:$C$4,$D$2:$D$4)</f><v>123.333333333333</v></c>",
    );
    expect(xml).toContain('<c r="F5"><v>122.5</v></c>');
    expect(xml).toContain("_xlfn._xlws.SORT(B2:B4,1,-1)");
  });

  it("that works on single cells is plain", async () => {
    const xml = sheetXml(await write(bookOf({ 0: { 0: { v: 2 }, 1: { f: "=A1*2" } } })));
    expect(xml).toContain('<c r="B1"><f>A1*2</f><v>4</v></c>');
  });

  it("that answers with text, a truth or an error has its value's type", async () => {
    const xml = sheetXml(
      await write(bookOf({ 0: { 0: { f: '="a"&"<b>"' }, 1: { f: "=1>0" }, 2: { f: "=1/0" } } })),
    );
    expect(xml).toContain('<c r="A1" t="str"><f>&quot;a&quot;&amp;&quot;&lt;b&gt;&quot;</f>');
    expect(xml).toContain('<c r="B1" t="b"><f>1&gt;0</f><v>1</v></c>');
    expect(xml).toContain('<c r="C1" t="e"><f>1/0</f><v>#DIV/0!</v></c>');
  });

  it("whose result finds no room keeps to its cell, and what is in its way stays", async () => {
    const book = bookOf({
      0: { 0: { f: "=SPARE.E1RM(D1:D2,5)" }, 3: { v: 100 } },
      1: { 0: { v: "here" }, 3: { v: 90 } },
    });
    const bytes = await write(book);
    expect(sheetXml(bytes)).toContain('ref="A1"');
    const { cell } = lookInto(readData(bytes));
    expect([cell("Log", "A1").v, cell("Log", "A2").v]).toEqual(["#VALUE!", "here"]);
  });

  it("that several cells share is written in each of them", async () => {
    const xml = sheetXml(
      await write(
        bookOf({
          0: { 0: { v: 1 }, 1: { f: "=A1+1", si: "x" } },
          1: { 0: { v: 5 }, 1: { si: "x" } },
        }),
      ),
    );
    expect(xml).toContain('<c r="B2"><f>A2+1</f><v>6</v></c>');
  });
});

describe("text", () => {
  it("is kept whatever characters it holds", async () => {
    const odd = ["a & <b>", "  spaces  ", "two\nlines", "_x0041_", "bell\u0007", "😀 é"];
    const row = Object.fromEntries(odd.map((v, column) => [column, { v, t: 1 }]));
    const path = onDisk("text", await write(bookOf({ 0: row })));
    if (hasValidator) expect(validateFile(path)).toMatchObject({ ok: true });
    const { sheetNamed } = lookInto(readData(new Uint8Array(readFileSync(path))));
    expect(Object.values(sheetNamed("Log").cellData![0]!).map(({ v }) => v)).toEqual(odd);
  });

  it("that looks like a number stays text", async () => {
    const bytes = await write(bookOf({ 0: { 0: { v: "80", t: 1 }, 1: { v: "007", t: 4 } } }));
    const { cell } = lookInto(readData(bytes));
    expect([cell("Log", "A1"), cell("Log", "B1")]).toMatchObject([
      { v: "80", t: 1 },
      { v: "007", t: 1 },
    ]);
  });
});

describe("how a cell looks", () => {
  it("comes from its column, its row and itself, the nearest first", async () => {
    const bytes = await write(
      bookOf(
        { 0: { 0: { v: 1 }, 1: { v: 2, s: { bl: 1 } } } },
        { columnData: { 0: { s: "red", w: 100 }, 1: { s: "red" } } },
      ),
    );
    const { style, sheetNamed } = lookInto(readData(bytes));
    expect(style("Log", "A1")).toMatchObject({
      bg: { rgb: "#ff0000" },
      n: { pattern: '0.0" kg"' },
    });
    expect(style("Log", "B1")).toMatchObject({ bg: { rgb: "#ff0000" }, bl: 1 });
    expect(sheetNamed("Log").columnData?.[0]?.w).toBe(100);
  });
});

let demo: Uint8Array;
beforeAll(async () => {
  demo = await demoBytes();
});

describe("the demo as a file", () => {
  it.skipIf(!hasValidator)("passes the validator", () => {
    expect(validateFile(onDisk("demo", demo))).toMatchObject({ ok: true, errors: [] });
  });

  it("has a value in every formula", () => {
    const file = readPackage(demo);
    const sheets = [...file.parts.keys()].filter((part) => part.startsWith("xl/worksheets/"));
    expect(sheets.length).toBeGreaterThan(5);
    for (const sheet of sheets) {
      const formulas = textAt(file, sheet).match(/<\/f>.{0,9}/g) ?? [];
      expect(formulas.filter((after) => !after.startsWith("</f><v>"))).toEqual([]);
    }
  });
});

describe.skipIf(!hasLibreOffice)("opened in LibreOffice and saved again", () => {
  let exceljs: IWorkbookData;
  let theDemo: IWorkbookData;
  beforeAll(async () => {
    const first = onDisk("exceljs-again", await write(openFile("exceljs")));
    const second = onDisk("demo-again", demo);
    const out = join(folder, "out");
    convert([first, second], "xlsx", out);
    const again = (path: string) =>
      readData(new Uint8Array(readFileSync(join(out, basename(path)))));
    exceljs = again(first);
    theDemo = again(second);
  });

  it("has the same cached values, sheet by sheet", () => {
    const { cell } = lookInto(exceljs);
    const { cell: before } = lookInto(openFile("exceljs"));
    for (const address of ["A2", "B2", "C5", "D2", "D3", "D4", "D5", "A7", "C7", "D7", "A9"]) {
      expect([address, cell("Crew & tests", address).v]).toEqual([
        address,
        before("Crew & tests", address).v,
      ]);
    }
  });

  it("has the demo's sheets and their plain cells", () => {
    const ours = readData(demo);
    const theirs = theDemo;
    const names = (data: IWorkbookData) => data.sheetOrder.map((id) => data.sheets[id]?.name);
    expect(names(theirs)).toEqual(names(ours));
    let compared = 0;
    ours.sheetOrder.forEach((id, index) => {
      const other = sheetAt(theirs, index).cellData ?? {};
      for (const { row, column, cell } of cellsOf(ours, id)) {
        if (cell.f !== undefined || cell.v === undefined) continue;
        expect(other[row]?.[column]?.v).toBe(cell.v);
        compared++;
      }
    });
    expect(compared).toBeGreaterThan(1000);
  });
});
