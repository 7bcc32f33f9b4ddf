import { describe, expect, test } from "vitest";
import { LOWEST_RPE, reserveToRpe, rpeToReserve } from "../../src/core/load/effortScale";
import { effortScale } from "./effortScale";

const { scale } = effortScale.read();
const numbered = scale.flatMap(({ rpe, printed, reserve }) =>
  typeof reserve === "number" ? [{ rpe, printed, reserve }] : [],
);

// Zourdos et al. 2016, J Strength Cond Res 30:267-275, figure of the scale.
describe("the repetitions-in-reserve scale of effort", () => {
  test.each(numbered)("RPE $rpe is a reserve of $reserve, up and down the scale", (step) => {
    expect(rpeToReserve(step.rpe)).toBe(step.reserve);
    expect(reserveToRpe(step.reserve)).toBe(step.rpe);
  });

  test.each(numbered.filter(({ printed }) => /\d/.test(printed)))(
    'RPE $rpe lies within what is printed beside it, "$printed"',
    ({ rpe, printed }) => {
      const counts = (printed.match(/\d+/g) ?? []).map(Number);
      expect(rpeToReserve(rpe)).toBeGreaterThanOrEqual(Math.min(...counts));
      expect(rpeToReserve(rpe)).toBeLessThanOrEqual(Math.max(...counts));
    },
  );

  test("RPE 9.5, printed as none left but more load, is less than one rep", () => {
    expect(rpeToReserve(9.5)).toBeGreaterThan(0);
    expect(rpeToReserve(9.5)).toBeLessThan(1);
  });

  test("the numbers end where the scale prints none", () => {
    expect(Math.min(...numbered.map(({ rpe }) => rpe))).toBe(LOWEST_RPE);
    const wordsOnly = scale.filter(({ reserve }) => typeof reserve !== "number");
    expect(Math.max(...wordsOnly.map(({ rpe }) => rpe))).toBeLessThan(LOWEST_RPE);
  });
});
