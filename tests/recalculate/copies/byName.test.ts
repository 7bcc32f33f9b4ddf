import { expect, it } from "vitest";
import { byName } from "../../../src/recalculate/copies/lambdas";
import { lambda } from "../../../src/recalculate/copies/lambdas/lambda";

it("refuses two functions of a copy by one name, where the second would calculate in the place of the first", () => {
  const mean = lambda("MEAN", "range", "AVERAGE(range)");
  const middle = lambda("MEAN", "range", "MEDIAN(range)");
  expect(byName([mean]).get("MEAN")).toBe(mean);
  expect(() => byName([mean, middle])).toThrow("two functions of the copy are MEAN");
});
