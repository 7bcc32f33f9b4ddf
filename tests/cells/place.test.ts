import { expect, test } from "vitest";
import { nthColumn, nthRow, tellRows } from "../../src/cells";

test("a row of a range is counted as people count", () => {
  const counted = [1, 2, 3, 4, 11, 12, 13, 21, 22, 23, 101, 111, 1002].map(nthRow);
  expect(counted.map((row) => row.slice(4, -4))).toEqual(
    "1st 2nd 3rd 4th 11th 12th 13th 21st 22nd 23rd 101st 111th 1002nd".split(" "),
  );
  expect(nthColumn(2)).toBe("the 2nd column");
});

test("the rows of a message are put into other words where somebody knows them", () => {
  const message = "the 3rd row of load is -5 (2 bad cells in all, next the 12th row of the reps)";
  const told = (row: number, name?: string) => (name === "reps" ? undefined : `${name} at ${row}`);
  expect(tellRows(message, told)).toBe(
    "load at 3 is -5 (2 bad cells in all, next the 12th row of the reps)",
  );
  expect(tellRows("the 1st row: too heavy", told)).toBe("undefined at 1: too heavy");
});
