import { expect, it } from "vitest";
import { invalid, notAvailable } from "../../src/cells";

it("an error says where it is, from the outside in", () => {
  const error = invalid("load is -5").at("column 2").at("row 7");
  expect(error).toMatchObject({ code: "#VALUE!", message: "row 7: column 2: load is -5" });
});

it("an error in a call on single cells needs no place", () => {
  const error = notAvailable("too few sets");
  expect(error.at("")).toBe(error);
  expect(error.code).toBe("#N/A");
});
