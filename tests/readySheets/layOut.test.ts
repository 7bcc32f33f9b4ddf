import { describe, expect, it } from "vitest";
import { layOutSheet, type SheetFile } from "../../src/readySheets";

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
