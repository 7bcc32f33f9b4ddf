import { describe, expect, it } from "vitest";
import { toRange } from "../../src/cells";
import { hasHeaderRow, isHeading } from "../../src/cells/header";
import { column, row } from "./fixtures";

const headed = (...columns: unknown[]) => hasHeaderRow(columns.map(toRange));

describe("a header row", () => {
  it("is text in every data column", () => {
    expect(headed(column("load", 100), column("reps", 5))).toBe(true);
    expect(headed(column("load", 100), column(8, 5))).toBe(false);
    expect(headed(column("load", 100), column(null, 5))).toBe(false);
  });

  it("is text in every column of a block", () => {
    expect(
      headed([
        ["T1", "T2"],
        [40, 41],
      ]),
    ).toBe(true);
    expect(
      headed([
        ["T1", 39],
        [40, 41],
      ]),
    ).toBe(false);
  });

  it("may tell a repetition maximum, but no load with its unit", () => {
    expect(headed(column("10RM", 100))).toBe(true);
    expect(headed(column("80kg", 100))).toBe(false);
    expect(headed(column("load", 100), column("5 reps", 5))).toBe(false);
  });

  it("is not judged by single cells or single rows, which have none", () => {
    expect(headed(column("load", 100), 5)).toBe(true);
    expect(headed(column("load", 100), row(1, 2, 3))).toBe(true);
    expect(headed("load")).toBe(false);
    expect(headed(row("load", 100))).toBe(false);
    expect(headed()).toBe(false);
  });
});

describe("a cell that heads a column", () => {
  it.each([
    ["text", "load", true],
    ["a data type's text", { type: "String", basicValue: "load" }, true],
    ["a number", 5, false],
    ["a number as text", "5", false],
    ["a blank", "", false],
    ["an error's text", "#N/A", false],
    ["an error of ours", "! load is text", false],
    ["a boolean", true, false],
    ["a date", new Date(2024, 0, 1), false],
  ])("%s: %s", (_kind, raw, expected) => {
    expect(isHeading(raw)).toBe(expected);
  });
});
