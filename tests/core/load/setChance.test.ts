import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { setChance } from "../../../src/core/load/setChance";
import { normalCdf } from "../../../src/core/statistics/normal";
import { equations, ownCurve, type Equation } from "../../../src/core/strength/equations";

const { epley, lombardi, brzycki } = equations;
const anyEquation = fc.constantFrom<Equation>(...Object.values(equations), ownCurve(26));

/** The same integral by Gauss's rule of two points, in many small steps on either side of the equation's corner. */
function plainIntegral(
  load: number,
  reps: number,
  oneRepMax: number,
  equation: Equation,
  maxSd: number,
  curveSd: number,
): number {
  const corner = Math.min(9, Math.max(-9, Math.log(reps - 1) / curveSd));
  let chance = 0;
  for (const [from, to] of [
    [-9, corner],
    [corner, 9],
  ] as const) {
    const step = (to - from) / 10_000;
    for (let i = 0; i < 20_000; i++) {
      const z = from + (Math.floor(i / 2) + 0.5 + (i % 2 === 0 ? -1 : 1) / Math.sqrt(12)) * step;
      const fraction = equation.fraction(1 + (reps - 1) * Math.exp(-curveSd * z));
      if (fraction <= 0) continue;
      const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
      chance += (step / 2) * density * normalCdf(Math.log((oneRepMax * fraction) / load) / maxSd);
    }
  }
  return chance;
}

describe("the chance of making a set", () => {
  it("is what adaptive quadrature in R gives", () => {
    expect(setChance(95, 7, 120, { equation: epley })).toBeCloseTo(0.6678718141, 9);
    const own = { equation: ownCurve(26), maxSd: 0.05 };
    expect(setChance(95, 7, 120, own)).toBeCloseTo(0.6820267218, 9);
    expect(setChance(82.5, 10, 110, { equation: lombardi })).toBeCloseTo(0.9359167159, 9);
  });

  it("is the integral over maximum and curve, to 1e-8", () => {
    fc.assert(
      fc.property(
        anyEquation,
        fc.integer({ min: 3, max: 30 }).map((halves) => halves / 2),
        fc.double({ min: 0.75, max: 1.3, noNaN: true }),
        fc.constantFrom(0.002, 0.01, 0.03, 0.05, 0.2),
        fc.constantFrom(0.05, 0.1, 0.25, 0.6),
        (equation, reps, share, maxSd, curveSd) => {
          const load = 100 * equation.fraction(reps) * share;
          const plain = plainIntegral(load, reps, 100, equation, maxSd, curveSd);
          const ours = setChance(load, reps, 100, { equation, maxSd, curveSd });
          expect(Math.abs(ours - plain)).toBeLessThan(1e-8);
        },
      ),
      { numRuns: 40 },
    );
  });

  it("is that integral too where the maximum is hardly known, and the load may be anything to the lifter", () => {
    const unknown = { equation: brzycki, maxSd: 5, curveSd: 0.6 };
    const plain = plainIntegral(60, 10, 100, brzycki, 5, 0.6);
    expect(setChance(60, 10, 100, unknown)).toBeCloseTo(plain, 3);
  });

  it("is one normal distribution for a single, and for a curve that is known", () => {
    expect(setChance(100, 1, 103, { equation: epley })).toBe(normalCdf(Math.log(1.03) / 0.03));
    const known = { equation: epley, curveSd: 0 };
    const margin = Math.log((100 * epley.fraction(5)) / 85);
    expect(setChance(85, 5, 100, known)).toBe(normalCdf(margin / 0.03));
    // A curve hardly in doubt comes to the same.
    const hardly = { equation: epley, curveSd: 1e-7 };
    expect(setChance(85, 5, 100, hardly)).toBeCloseTo(setChance(85, 5, 100, known), 6);
  });

  it("is even for the load that the equation says, where the curve may lie either way", () => {
    expect(setChance(100, 1, 100, { equation: epley })).toBe(0.5);
    const load = 100 * epley.fraction(6);
    expect(Math.abs(setChance(load, 6, 100, { equation: epley }) - 0.5)).toBeLessThan(0.02);
  });

  it("falls with load and reps, and lies nearer to even the less is known", () => {
    const at = (load: number, reps: number, maxSd = 0.03) =>
      setChance(load, reps, 120, { equation: epley, maxSd });
    expect(at(90, 7)).toBeGreaterThan(at(95, 7));
    expect(at(95, 6)).toBeGreaterThan(at(95, 7));
    expect(at(95, 7)).toBeGreaterThan(at(95, 7, 0.1));
    expect(at(95, 7, 0.1)).toBeGreaterThan(0.5);
  });

  it("is sure where the set is far too light or far too heavy, and never leaves 0 to 1", () => {
    expect(setChance(20, 5, 200, { equation: epley })).toBe(1);
    // The pieces of the integral add up to 1 and some dust.
    expect(setChance(60, 3, 100, { equation: epley })).toBe(1);
    expect(setChance(300, 5, 200, { equation: epley })).toBeLessThan(1e-15);
    // A straight line that runs into the floor: past 37 reps it gives nothing.
    const far = setChance(1, 15, 100, { equation: brzycki, curveSd: 0.6 });
    expect(far).toBeGreaterThan(0.9);
    expect(far).toBeLessThan(1);
  });

  it("refuses what cannot be right", () => {
    const trying =
      (reps: number, options = {}) =>
      () =>
        setChance(95, reps, 120, { equation: brzycki, ...options });
    expect(trying(16)).toThrow("expected at most 15 for this equation");
    expect(trying(0.5)).toThrow("expected at least 1");
    expect(trying(5, { maxSd: 0 })).toThrow("the standard deviation of the maximum is 0");
    expect(trying(5, { curveSd: -1 })).toThrow("the standard deviation of the curve is -1");
    expect(() => setChance(0, 5, 120, { equation: epley })).toThrow("load is 0");
    expect(() => setChance(95, 5, 0, { equation: epley })).toThrow("the one-rep max is 0");
  });
});
