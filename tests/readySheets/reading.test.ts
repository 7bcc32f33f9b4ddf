import { describe, expect, it } from "vitest";
import { parseRange } from "../../src/readySheets/address";
import { parseCsv } from "../../src/readySheets/csv";

describe("an address", () => {
  it("is a cell, a range, or whole columns and rows", () => {
    expect(parseRange("B4")).toEqual({ startRow: 3, endRow: 3, startColumn: 1, endColumn: 1 });
    expect(parseRange("Z9:AB12")).toEqual({
      startRow: 8,
      endRow: 11,
      startColumn: 25,
      endColumn: 27,
    });
    expect(parseRange("B:D")).toEqual({
      startRow: NaN,
      endRow: NaN,
      startColumn: 1,
      endColumn: 3,
    });
    expect(parseRange("2")).toEqual({
      startRow: 1,
      endRow: 1,
      startColumn: NaN,
      endColumn: NaN,
    });
  });

  it.each(["", "b4", "A0", "4A", "A1:", "A1:B2x"])("is not %j", (address) => {
    expect(() => parseRange(address)).toThrow(/is not an address/);
  });
});

describe("comma-separated values", () => {
  it("keep blanks at either end, and commas and quotes inside quotes", () => {
    expect(parseCsv('a,b\r\n,1,\n"x, ""y""",,z\n')).toEqual([
      ["a", "b"],
      ["", "1", ""],
      ['x, "y"', "", "z"],
    ]);
  });
});
