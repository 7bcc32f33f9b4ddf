import { describe, expect, it } from "vitest";
import { layOutSheet, reading, type SheetFile } from "../../src/readySheets";
import { onTop } from "../../src/readySheets/ownList";

const workbook = {
  colors: { accent: "#123456", line: "#cccccc" },
  styles: {
    base: { font: "Arial", size: 11 },
    heading: { bold: true, color: "accent", bottom: "line", align: "center", wrap: true },
    plain: { bold: false, wrap: false, indent: 8 },
  },
} as const;

const layOut = (sheet: Omit<SheetFile, "name">) =>
  layOutSheet({ name: "One", ...sheet }, workbook, () => [["a", "1"]]);

describe("a sheet laid out", () => {
  it("says in words what stands in each cell and how it looks, its colours written out", () => {
    const { cells, styles } = layOut({
      cells: { A1: ["lift", true], A2: "2026-01-05", B2: "=A2+1" },
      style: { "A1:B1": "heading" },
      csv: { A3: "log.csv" },
    });
    expect(cells[0]![0]).toEqual({ value: "lift", style: "base heading" });
    expect(cells[0]![1]).toEqual({ value: true, style: "base heading" });
    expect(cells[1]![0]).toEqual({ value: 46027, style: "base" });
    expect(cells[1]![1]).toEqual({ formula: "=A2+1", style: "base" });
    expect(cells[2]).toEqual({ 0: { value: "a", style: "base" }, 1: { value: 1, style: "base" } });
    expect(styles).toEqual({
      base: { font: "Arial", size: 11 },
      "base heading": {
        font: "Arial",
        size: 11,
        bold: true,
        color: "#123456",
        bottom: "#cccccc",
        align: "center",
        wrap: true,
      },
    });
  });

  it("says sizes in pixels, merged cells as areas, and how much stays in sight", () => {
    const sheet = layOut({
      widths: { "B:C": 70 },
      heights: { "1": 40 },
      merge: ["A1:C1"],
      freeze: "B4",
      tab: "accent",
    });
    expect(sheet).toMatchObject({
      widths: { 1: 70, 2: 70 },
      heights: { 0: 40 },
      merged: [{ startRow: 0, endRow: 0, startColumn: 0, endColumn: 2 }],
      frozen: { rows: 3, columns: 1 },
      tab: "#123456",
      gridlines: true,
      rowCount: 60,
      columnCount: 16,
    });
    expect(layOut({})).not.toHaveProperty("frozen");
  });
});

describe("a sheet that reads a list", () => {
  const { own, ...ready } = layOut({
    reads: { list: "log", columns: { load: "$C$1:$C$2" } },
    cells: { A1: "=MAX({load})" },
    fill: { "A2:A3": "=INDEX({load}, ROWS(A$2:A2))" },
    invented: { cells: { C1: [[80], [85]] } },
  });

  it("reads an invented one that it brings along", () => {
    expect(ready.cells[0]).toMatchObject({ 0: { formula: "=MAX($C$1:$C$2)" }, 2: { value: 80 } });
    expect(ready.cells[2]![0]).toMatchObject({ formula: "=INDEX($C$1:$C$2, ROWS(A$2:A3))" });
  });

  it("reads the coach's own instead, and leaves the invented one out", () => {
    expect(own).toMatchObject({ list: "log", columns: ["load"] });
    const { cells } = reading(own!, { load: "Log!$E$2:$E$90" });
    expect(cells[0]).toEqual({ 0: { formula: "=MAX(Log!$E$2:$E$90)", style: "base" } });
    expect(cells[2]![0]).toMatchObject({ formula: "=INDEX(Log!$E$2:$E$90, ROWS(A$2:A3))" });
  });
});

describe("a sheet made like another", () => {
  it("has what that one has, and on top of it its own", () => {
    const sheet = onTop(
      { name: "One", cells: { A1: "title", B2: 1 }, merge: ["A1:B1"] },
      { name: "Two", cells: { B2: 2 }, merge: ["A2:B2"] },
    );
    expect(sheet).toMatchObject({
      name: "Two",
      cells: { A1: "title", B2: 2 },
      merge: ["A1:B1", "A2:B2"],
    });
  });
});
