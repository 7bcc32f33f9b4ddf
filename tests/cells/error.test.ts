import { expect, it } from "vitest";
import { invalid, notAvailable } from "../../src/cells";

it("an error says where it is, from the outside in", () => {
  const error = invalid("load is -5").at("column 2").at("row 7");
  expect(error).toMatchObject({ code: "#VALUE!", message: "row 7: column 2: load is -5" });
});

it("an error that begins with an argument says where in that it is", () => {
  expect(notAvailable("load holds #N/A").of("the 2nd row")).toMatchObject({
    code: "#N/A",
    message: "the 2nd row of load holds #N/A",
  });
});

it("an error in a call on single cells needs no place", () => {
  const error = notAvailable("too few sets");
  expect(error.at("")).toBe(error);
  expect(error.of("")).toBe(error);
  expect(error.code).toBe("#N/A");
});
