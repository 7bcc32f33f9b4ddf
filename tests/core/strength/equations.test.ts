import { describe, expect, it } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import {
  checkReach,
  equations,
  fractionAt,
  ownCurve,
  repsToFailureAt,
  type Equation,
} from "../../../src/core/strength/equations";

const published = Object.entries<Equation>(equations);
const all: [string, Equation][] = [...published, ["a lifter's own curve", ownCurve(26)]];

describe.each(all)("%s", (_name, equation) => {
  it("leaves all of the maximum for one rep", () => {
    expect(equation.fraction(1)).toBe(1);
    expect(equation.repsAt(1)).toBe(1);
  });

  it("has the slope that its fractions have", () => {
    const h = 1e-5;
    for (const t of [1.2, 1.9, 2.1, 5, 12.5]) {
      const slope = (equation.fraction(t + h) - equation.fraction(t - h)) / (2 * h);
      expect(equation.slope(t)).toBeCloseTo(slope, 8);
    }
    // Where line and curve meet it is the curve's.
    expect(equation.slope(2)).toBeCloseTo((equation.fraction(2 + h) - equation.fraction(2)) / h, 5);
  });

  it("gives for each of its fractions the reps that have it", () => {
    for (const t of [1, 1.5, 2, 3, 8, 15]) {
      expect(equation.repsAt(equation.fraction(t))).toBeCloseTo(t, 9);
      expect(repsToFailureAt(equation, equation.fraction(t))).toBeCloseTo(t, 9);
    }
  });

  it("reaches to its cap, dust aside, and no further", () => {
    const { cap } = equation;
    expect(fractionAt(equation, cap)).toBe(equation.fraction(cap));
    expect(repsToFailureAt(equation, equation.fraction(cap))).toBeCloseTo(cap, 6);
    expect(() => fractionAt(equation, cap + 0.5)).toThrow(
      new BadInput(`reps plus reserve is ${cap + 0.5}; expected at most ${cap} for this equation`),
    );
    expect(() => repsToFailureAt(equation, equation.fraction(cap + 0.001))).toThrow(
      new NoAnswer(`the load is lighter than this equation reaches (${cap} reps to failure)`),
    );
  });

  it("needs one rep", () => {
    expect(() => checkReach(equation, 1)).not.toThrow();
    expect(() => checkReach(equation, 1 / 3)).toThrow(
      new BadInput("reps plus reserve is 0.333333; expected at least 1"),
    );
  });
});

describe.each(published)("%s", (_name, equation) => {
  it("is a straight line up to two reps", () => {
    const half = (1 + equation.fraction(2)) / 2;
    expect(equation.fraction(1.5)).toBeCloseTo(half, 12);
    expect(equation.repsAt(half)).toBeCloseTo(1.5, 12);
  });
});

// The published equations by arithmetic (LeSuer et al. 1997).
it.each([
  ["epley", 116.666667],
  ["brzycki", 112.5],
  ["lander", 113.708918],
  ["lombardi", 117.461894],
  ["mayhew", 119.01068],
  ["oconner", 112.5],
  ["wathan", 116.582505],
] as const)("five reps with 100 show, by %s, a maximum of %d", (name, oneRepMax) => {
  expect(100 / equations[name].fraction(5)).toBeCloseTo(oneRepMax, 5);
});

it("a curve that never falls so low has no reps for a load so light", () => {
  // Mayhew's and Wathan's level off at 52.2% and 48.8% of the maximum.
  expect(() => repsToFailureAt(equations.mayhew, 0.52)).toThrow(NoAnswer);
  expect(() => repsToFailureAt(equations.wathan, 0.48)).toThrow(NoAnswer);
});

it("straight lines are used up to 15 reps to failure, curves up to 30", () => {
  const caps = published.map(([name, { cap }]) => [name, cap]);
  expect(Object.fromEntries(caps)).toEqual({
    epley: 30,
    brzycki: 15,
    lander: 15,
    lombardi: 30,
    mayhew: 30,
    oconner: 30,
    wathan: 30,
  });
  expect(ownCurve(26).cap).toBe(30);
});

it("a lifter is a quarter or so from a published curve, and a tenth from their own", () => {
  // Chosen by simulation: docs/accuracy.md.
  expect(new Set(published.map(([, { curveSd }]) => curveSd))).toEqual(new Set([0.25]));
  expect(ownCurve(26).curveSd).toBe(0.1);
});

it("a lifter's own curve has half of the maximum left its constant of reps past the first", () => {
  expect(ownCurve(26).fraction(27)).toBe(0.5);
  expect(ownCurve(26).slope(1)).toBeCloseTo(-1 / 26, 12);
});
