import { BorderStyleTypes, HorizontalAlign, WrapStrategy } from "@univerjs/core";
import { describe, expect, it } from "vitest";
import { lossesOf, readPackage } from "../../../src/xlsx";
import { bytesOf } from "../../xlsx/support";
import { lookInto, openFile } from "./support";

/** Day 0 is 30 December 1899. */
const dayOf = (year: number, month: number, day: number) =>
  (Date.UTC(year, month - 1, day) - Date.UTC(1899, 11, 30)) / 86_400_000;

describe("a workbook by XlsxWriter", () => {
  const { cell, sheetNamed, style } = lookInto(openFile("xlsxwriter"));
  const log = "Week 1's log";

  it("has its values: dates as days, text of several fonts as text, errors as their code", () => {
    expect(cell(log, "A2").v).toBe(dayOf(2026, 1, 5));
    expect(cell(log, "B3")).toMatchObject({ v: 102.5, t: 2 });
    expect(cell(log, "F2").v).toBe("Squat high bar");
    expect(cell(log, "F8").v).toBe('5 < 6 & "so on"');
    expect(cell(log, "G7")).toMatchObject({ v: 1, t: 3 });
    expect(cell(log, "H7")).toMatchObject({ f: "=1/0", v: "#DIV/0!" });
  });

  it("has our function in Excel's spelling over the table's plain ranges", () => {
    const formula = "=SPARE.E1RM($B$2:$B$4,$C$2:$C$4,$D$2:$D$4)";
    expect(cell(log, "F3")).toMatchObject({ f: formula, v: 125 });
    expect(cell("Two", "A2").f).toBe("=SPARE.E1RM(100,5)");
  });

  it("leaves the cells free that a formula spills over", () => {
    expect([cell(log, "F4").v, cell(log, "F5").v, cell(log, "H5").v]).toEqual(
      Array(3).fill(undefined),
    );
    expect(cell(log, "H3").f).toBe("=SORT(B2:B4,1,-1)");
  });

  it("looks as it did", () => {
    expect(sheetNamed(log).freeze).toMatchObject({ xSplit: 1, ySplit: 1 });
    expect(sheetNamed(log).mergeData).toEqual([
      { startRow: 0, startColumn: 5, endRow: 0, endColumn: 7 },
    ]);
    // Fourteen digits of seven pixels and the padding of five.
    expect(sheetNamed(log).columnData?.[0]?.w).toBe(14 * 7 + 5);
    expect(style(log, "F1")).toMatchObject({
      bl: 1,
      bg: { rgb: "#1f6b63" },
      cl: { rgb: "#ffffff" },
      ht: HorizontalAlign.CENTER,
    });
    expect(style(log, "A2").n?.pattern).toBe("yyyy-mm-dd");
    expect(sheetNamed("Two").hidden).toBe(1);
  });

  it("has its names", () => {
    const names = openFile("xlsxwriter").resources?.[0]?.data ?? "";
    expect(Object.values(JSON.parse(names) as object)).toEqual([
      expect.objectContaining({ name: "Factor", formulaOrRefString: "=2" }),
      expect.objectContaining({ name: "Loads", formulaOrRefString: "'Week 1''s log'!$B$2:$B$4" }),
    ]);
  });

  it("says what a copy will not have", () => {
    const losses = lossesOf(readPackage(bytesOf("xlsxwriter")));
    expect(losses).toEqual(["tables' own look and names"]);
    expect(lossesOf(readPackage(bytesOf("exceljs")))).toEqual([
      "links",
      "hiding of sheets that only a macro shows",
    ]);
    expect(lossesOf(readPackage(bytesOf("openpyxl")))).toEqual(["author's name"]);
  });
});

describe("a workbook by openpyxl that counts days from 1904", () => {
  const { cell, sheetNamed, style } = lookInto(openFile("openpyxl"));

  it("has its dates on the days they are", () => {
    expect(cell("Tests", "E2").v).toBe(dayOf(2026, 1, 2));
    expect(cell("Tests", "B2").v).toBe(90);
  });

  it("has formulas that nothing has computed yet", () => {
    expect(cell("Tests", "D2")).toMatchObject({ f: "=C2-B2" });
    expect(cell("Tests", "D2").v).toBeUndefined();
    expect(cell("Tests", "D6").f).toBe("=SUM((C2:C4-B2:B4)^2)");
    expect(cell("Tests", "B8").f).toBe("=STDEV.S(B2:B4)");
    expect([cell("Tests", "B9").f, cell("Tests", "C9").f]).toEqual(
      Array(2).fill("=SPARE.LOADFOR(140,5,2,2.5)"),
    );
  });

  it("looks as it did", () => {
    expect(style("Tests", "A1")).toMatchObject({
      ff: "Arial",
      fs: 12,
      bg: { rgb: "#ddeeec" },
      tb: WrapStrategy.WRAP,
      bd: { b: { s: BorderStyleTypes.THIN, cl: { rgb: "#1f6b63" } } },
    });
    // Thirty points.
    expect(sheetNamed("Tests").rowData?.[0]).toMatchObject({ h: 40, ia: 0 });
    expect(sheetNamed("Tests").tabColor).toBe("#1f6b63");
    expect(cell("Tests", "A10").v).toBe("two\nlines");
  });
});

describe("a workbook by ExcelJS", () => {
  const { cell, sheetNamed, style } = lookInto(openFile("exceljs"));
  const sheet = "Crew & tests";

  it("has every formula of those that share one", () => {
    expect(["D2", "D3", "D5"].map((address) => cell(sheet, address).f)).toEqual([
      "=ROUND(B2*(1+$C2/30),1)",
      "=ROUND(B3*(1+$C3/30),1)",
      "=ROUND(B5*(1+$C5/30),1)",
    ]);
    expect(cell(sheet, "D4").v).toBe(107.7);
  });

  it("has its colours, from the theme, tinted, and from the old palette", () => {
    // The theme's accents are 4f81bd and f79646; two fifths of the second and three of white.
    const { cl, bg, bd } = style(sheet, "A1");
    expect(cl?.rgb).toBe("#4f81bd");
    expect(bg?.rgb).toBe("#fcd5b5");
    expect(bd?.b).toEqual({ s: BorderStyleTypes.DOUBLE, cl: { rgb: "#ff0000" } });
  });

  it("has what else a cell can hold", () => {
    expect(cell(sheet, "A7").v).toBe("best of four");
    expect(cell(sheet, "C7").v).toBe("#N/A");
    expect(cell(sheet, "A9").v).toBe(dayOf(2026, 1, 5));
    expect(style(sheet, "A9")).toMatchObject({ tr: { a: -45 }, n: { pattern: "dd/mm/yyyy" } });
    expect(style(sheet, "B2").n?.pattern).toBe('0.0" kg"');
    expect(sheetNamed(sheet).columnData?.[5]?.hd).toBe(1);
    expect(sheetNamed(sheet).showGridlines).toBe(0);
    expect(sheetNamed("Gone").hidden).toBe(1);
  });
});

describe("a workbook by LibreOffice", () => {
  const { cell, style } = lookInto(openFile("libreoffice"));

  it("has its formulas and what they computed", () => {
    expect(cell("Ergo week", "D3")).toMatchObject({ f: "=B3*C3", v: 410 });
    expect(cell("Ergo week", "B7")).toMatchObject({ v: "heavy", t: 1 });
    expect(cell("Ergo week", "B8")).toMatchObject({ v: 1, t: 3 });
    expect(cell("Ergo week", "B9").v).toBe("#DIV/0!");
    expect(cell("It's two", "A1")).toMatchObject({ f: "='Ergo week'!B6", v: 1225 });
    expect(cell("Ergo week", "B11").f).toBe("=SPARE.LOADFOR(140,5,2,2.5)");
  });

  it("has one formula for an array over several cells", () => {
    expect(cell("Ergo week", "F2").f).toBe("=B2:B4*2");
    expect(cell("Ergo week", "F3").f).toBeUndefined();
    expect(cell("Ergo week", "F3").v).toBeUndefined();
  });

  it("looks as it did", () => {
    expect(style("Ergo week", "A1")).toMatchObject({ bl: 1, cl: { rgb: "#1f6b63" } });
    expect(cell("Ergo week", "A13").v).toBe("row & erg <land>");
  });
});
