import { describe, expect, it } from "vitest";
import { groupRows, groupsIn, HostError, type Labels } from "../../src/cells";
import { keyContent, labelIdentity } from "../../src/cells/keys";
import { elementAt } from "../present";
import { blanksButZero, column, thrownBy } from "./fixtures";

const everyRow = () => true;
const group = (cells: unknown[][], counts: (row: number) => boolean = everyRow, firstRow = 1) =>
  groupRows({ headings: elementAt(cells, 0).map(() => undefined), cells }, counts, firstRow, "by");

describe("rows under one key", () => {
  it("come in order of first appearance", () => {
    const groups = group(column("Ben", "Ann", "Ben", "Cat", "Ann"));
    expect(groups.keys).toEqual([["Ben"], ["Ann"], ["Cat"]]);
    expect([...groups.groupOf]).toEqual([0, 1, 0, 2, 1]);
  });

  it("share it as a spreadsheet compares: case and outer blanks aside", () => {
    const groups = group(column("Ann", "ANN", " ann "));
    expect(groups.keys).toEqual([["Ann"]]);
  });

  it("give it back untouched, as its first row has it", () => {
    const groups = group(column(" Ann B ", 3, 2.5, true, false, "10RM"));
    expect(groups.keys).toEqual([[" Ann B "], [3], [2.5], ["TRUE"], ["FALSE"], ["10RM"]]);
  });

  it("share every part of a compound key", () => {
    const groups = group([
      ["Ann", 1],
      ["Ann", 2],
      ["ann", 1],
      ["Ben", 1],
      ["Ben", 1],
    ]);
    expect(groups.keys).toEqual([
      ["Ann", 1],
      ["Ann", 2],
      ["Ben", 1],
    ]);
    expect([...groups.groupOf]).toEqual([0, 1, 0, 2, 2]);
  });

  it("are not taken together because their parts run together", () => {
    expect(
      group([
        ["a", "bc"],
        ["ab", "c"],
        ["abc", ""],
        ["", "abc"],
      ]).keys,
    ).toHaveLength(4);
  });

  it.each(blanksButZero)("may have a blank key, from %s an empty cell", (_host, blank) => {
    const groups = group(column("Ann", blank, ""));
    expect(groups.keys).toEqual([["Ann"], [""]]);
    expect([...groups.groupOf]).toEqual([0, 1, 1]);
  });

  it("come in order of first appearance too where two columns have a thousand labels each", () => {
    const pairs = Array.from({ length: 1100 }, (_row, n) => [`lifter ${n}`, `lift ${n}`]);
    const groups = group([...pairs, ...pairs.slice(7), ["lifter 1", "lift 2"]]);
    expect(groups.keys).toEqual([...pairs, ["lifter 1", "lift 2"]]);
    const numbers = [...pairs.keys()];
    expect([...groups.groupOf]).toEqual([...numbers, ...numbers.slice(7), 1100]);
  });

  it("are the sheet's day where the key is a date", () => {
    expect(group(column(new Date(2024, 0, 1), 45292)).keys).toEqual([[45292]]);
  });
});

describe("a row that does not count", () => {
  it("opens no group, and its key is not even read", () => {
    const groups = group(column("Ann", "#REF!", "Ben"), (row) => row !== 1);
    expect(groups.keys).toEqual([["Ann"], ["Ben"]]);
    expect([...groups.groupOf]).toEqual([0, -1, 1]);
  });
});

it("what is in each group is its keys and its rows, those left out aside", () => {
  const groups = group(column("Ann", "Ben", "Ann", "Cat"), (row) => row !== 3);
  expect(groupsIn(groups)).toEqual([
    { key: ["Ann"], rows: [0, 2] },
    { key: ["Ben"], rows: [1] },
  ]);
});

it("a key goes back into a cell as it was; nothing stands for a blank or an error", () => {
  expect([5, "Ann", true, false, null, new HostError("#N/A")].map(keyContent)).toEqual([
    5,
    "Ann",
    "TRUE",
    "FALSE",
    "",
    "",
  ]);
});

it("a key that holds an error stops the call, named by the row of the range", () => {
  expect(thrownBy(() => group(column("Ann", "#N/A")))).toBe("#VALUE! the 2nd row of by holds #N/A");
  expect(thrownBy(() => group(column("Ann", "#N/A"), everyRow, 2))).toBe(
    "#VALUE! the 3rd row of by holds #N/A",
  );
});

it("keys come under the data's own headings, else under “by”", () => {
  const labels: Labels = { headings: ["lifter", undefined], cells: [["Ann", 1]] };
  expect(groupRows(labels, everyRow, 2, "by").headings).toEqual(["lifter", "by"]);
});

it("labels are the same where a spreadsheet takes them for the same", () => {
  expect(labelIdentity(" Ann ")).toBe(labelIdentity("ann"));
  expect(labelIdentity(null)).toBe(labelIdentity("  "));
  expect(labelIdentity(2.5)).toBe("2.5");
  expect(labelIdentity("Ann")).not.toBe(labelIdentity("Anna"));
});
