import { describe, expect, it } from "vitest";
import { readTable, requiredIn, type TableShape } from "../../src/cells";
import { only } from "../present";
import { blanks, load, reps, reserve, thrownBy } from "./fixtures";

const blocks: TableShape = { name: "blocks", columns: [reps, reserve], canHaveLabels: true };
const plates: TableShape = { name: "plates", columns: [load, reps], least: 1 };

describe("a table argument", () => {
  it("is read row by row, with the place of each row in the range", () => {
    expect(
      readTable(
        [
          [5, 2],
          ["3", 0],
        ],
        blocks,
      ),
    ).toEqual([
      { row: 1, label: undefined, numbers: [5, 2] },
      { row: 2, label: undefined, numbers: [3, 0] },
    ]);
  });

  it("may have names before its numbers, blank ones too", () => {
    const rows = readTable(
      [
        ["Block A", 5, 2],
        ["", 3, 1],
        [7, 3, 1],
      ],
      blocks,
    );
    expect(rows.map(({ label }) => label)).toEqual(["Block A", undefined, 7]);
  });

  it("may do without the columns that are not needed", () => {
    expect(readTable([[20], [10]], plates).map(({ numbers }) => numbers)).toEqual([
      [20, null],
      [10, null],
    ]);
  });

  it.each(blanks)("passes over the rows that are blank in %s", (_host, blank) => {
    const rows = readTable(
      [
        ["Block A", 5, 2],
        [blank, blank, blank],
        ["Block B", 3, 0],
        [blank, blank, blank],
      ],
      blocks,
    );
    expect(rows.map(({ row }) => row)).toEqual([1, 3]);
  });
});

it.each(blanks)("a table argument of one blank cell of %s has no rows yet", (_host, blank) => {
  expect(readTable([[blank]], blocks)).toEqual([]);
});

describe("the header row of a table argument", () => {
  it.each(blanks)("is its own; over the names %s may leave a blank", (_host, blank) => {
    const rows = readTable(
      [
        [blank, "10RM", "reserve"],
        ["Block A", 5, 2],
      ],
      blocks,
    );
    expect(rows).toEqual([{ row: 2, label: "Block A", numbers: [5, 2] }]);
  });

  it("is no row whose name is a number", () => {
    const numbered = [
      [3, "10RM", "reserve"],
      ["Block A", 5, 2],
    ];
    expect(thrownBy(() => readTable(numbered, blocks))).toContain("the 1st row of reps is text");
  });

  it("is no row of names beside numbers", () => {
    expect(readTable([["Block A", 5, 2]], blocks)).toHaveLength(1);
    expect(thrownBy(() => readTable([["80kg"], [20]], plates))).toContain(
      "the 1st row of load is text",
    );
  });
});

describe("a table argument that cannot be right", () => {
  it.each([
    [
      [[1, 2, 3, 4]],
      blocks,
      "blocks has 1 row of 4 columns; expected the columns [name], reps, reserve",
    ],
    [5, blocks, "blocks has 1 row; expected the columns [name], reps, reserve"],
    [[[1, 2, 3]], plates, "plates has 1 row of 3 columns; expected the columns load, [reps]"],
  ])("names the columns that were expected", (given, shape, message) => {
    expect(thrownBy(() => readTable(given, shape))).toBe(`#VALUE! ${message}`);
  });

  it("names the row of a bad cell", () => {
    const bad = (cell: unknown) =>
      thrownBy(() =>
        readTable(
          [
            ["reps", "reserve"],
            [5, cell],
          ],
          blocks,
        ),
      );
    expect(bad("2kg")).toBe(
      '#VALUE! the 2nd row of reserve is text, "2kg"; expected reps in reserve, 0 or more',
    );
    expect(bad("#N/A")).toBe("#VALUE! the 2nd row of reserve holds #N/A");
    expect(thrownBy(() => readTable([["#REF!", 5, 2]], blocks))).toBe(
      "#VALUE! the 1st row of blocks holds #REF!",
    );
  });

  it("names the number that a row cannot do without", () => {
    const row = only(readTable([["Block A", 5, ""]], blocks));
    expect(requiredIn(row, 0, reps)).toBe(5);
    expect(thrownBy(() => requiredIn(row, 1, reserve))).toBe(
      "#VALUE! the 1st row of reserve is blank; expected reps in reserve, 0 or more",
    );
  });
});
