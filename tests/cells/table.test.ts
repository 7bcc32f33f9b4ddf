import { expect, it } from "vitest";
import { contentOf, table } from "../../src/cells";
import { errorText } from "./fixtures";

it("a table always has its heading row", () => {
  expect(table(["week", "load"], [])).toEqual([["week", "load"]]);
  expect(table(["week", "load"], [[1, 100]])).toEqual([
    ["week", "load"],
    [1, 100],
  ]);
});

it("a value that does not exist is an empty cell of a table, never a null that shows as 0", () => {
  expect(table(["n", "low"], [[1, { absent: "one athlete has no spread" }]])).toEqual([
    ["n", "low"],
    [1, ""],
  ]);
});

it("a single value that does not exist is #N/A with the reason", () => {
  expect(errorText(contentOf({ absent: "one athlete has no spread" }))).toBe(
    "#N/A one athlete has no spread",
  );
  expect(contentOf(5)).toBe(5);
  expect(contentOf("keep")).toBe("keep");
});
