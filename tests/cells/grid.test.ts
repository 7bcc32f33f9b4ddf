import { runInNewContext } from "node:vm";
import { describe, expect, it } from "vitest";
import {
  cellAt,
  cellsOf,
  isGiven,
  isSingle,
  onlyCell,
  single,
  sizeOf,
  toRange,
  widthOf,
} from "../../src/cells";

describe("an argument as a range", () => {
  it.each([
    ["a single value, as Sheets passes one cell", 5, [[5]]],
    ["a single cell, as Excel passes one", [[5]], [[5]]],
    ["a column", [[1], [2]], [[1], [2]]],
    ["a row", [[1, 2]], [[1, 2]]],
    ["a flat list", [1, 2], [[1, 2]]],
    [
      "a grid",
      [
        [1, 2],
        [3, 4],
      ],
      [
        [1, 2],
        [3, 4],
      ],
    ],
    ["an array data type", { type: "Array", elements: [[1], [2]] }, [[1], [2]]],
    [
      "a data type that is no array",
      { type: "Double", basicValue: 1 },
      [[{ type: "Double", basicValue: 1 }]],
    ],
    [
      "rows of unequal length",
      [[1], [2, 3]],
      [
        [1, null],
        [2, 3],
      ],
    ],
    [
      "rows beside single values",
      [[1, 2], 3],
      [
        [1, 2],
        [3, null],
      ],
    ],
    ["no row", [], [[null]]],
    ["a row without cells", [[]], [[null]]],
    ["rows without cells", [[], [1]], [[null], [1]]],
    ["nothing", null, [[null]]],
  ])("is rows of one width, at least one cell: %s", (_kind, argument, cells) => {
    const range = toRange(argument);
    expect(range).toEqual({ rows: cells.length, columns: cells[0]?.length, cells });
  });

  it("is read from another realm, whose arrays are not ours", () => {
    const foreign: unknown = runInNewContext("[[1], [2]]");
    expect(toRange(foreign)).toMatchObject({ rows: 2, columns: 1 });
    expect(cellsOf(toRange(foreign))).toEqual([1, 2]);
  });
});

describe("an argument that was left out", () => {
  it("is null or undefined; a blank cell was given", () => {
    expect([null, undefined].map(isGiven)).toEqual([false, false]);
    expect(["", 0, [[null]], [[""]], { type: "Empty" }].every(isGiven)).toBe(true);
  });
});

describe("a range", () => {
  it("is single where it is one cell", () => {
    expect(isSingle(toRange([[1]]))).toBe(true);
    expect(isSingle(toRange([[1, 2]]))).toBe(false);
    expect(isSingle(toRange([[1], [2]]))).toBe(false);
  });

  it("tells its size in words", () => {
    expect(sizeOf(toRange([[1]]))).toBe("1 row");
    expect(sizeOf(toRange([[1], [2]]))).toBe("2 rows");
    expect(sizeOf(toRange([[1, 2, 3, 4]]))).toBe("1 row of 4 columns");
    expect(
      sizeOf(
        toRange([
          [1, 2],
          [3, 4],
        ]),
      ),
    ).toBe("2 rows of 2 columns");
  });

  it("is read row by row", () => {
    expect(
      cellsOf(
        toRange([
          [1, 2],
          [3, 4],
        ]),
      ),
    ).toEqual([1, 2, 3, 4]);
  });
});

it("rows are as wide as the first; there may be none", () => {
  expect([widthOf([[1, 2]]), widthOf([[]]), widthOf([])]).toEqual([2, 0, 0]);
});

it("one cell is all there is of a single result only", () => {
  expect(onlyCell([[5]])).toBe(5);
  expect([onlyCell([[5, 6]]), onlyCell([[5], [6]]), onlyCell([])]).toEqual(
    Array(3).fill(undefined),
  );
});

it("there is nothing outside a range", () => {
  const range = toRange([[1, 2]]);
  expect([cellAt(range, 0, 1), cellAt(range, 0, 2), cellAt(range, 1, 0)]).toEqual([
    2,
    undefined,
    undefined,
  ]);
});

it("a single content is a grid of one cell", () => {
  expect(single("")).toEqual([[""]]);
});
