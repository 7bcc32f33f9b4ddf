import fc from "fast-check";
import { describe, expect, it } from "vitest";
import handbook from "../../../shared/reference/handbook.json";
import { criticalValue } from "../../../src/core/statistics/inference";
import { fitCurve, type CurveFit, type CurveSet } from "../../../src/core/strength/fitCurve";

const setsOf = (loads: readonly number[], reps: readonly number[]): CurveSet[] =>
  loads.map((load, i) => ({ load, reps: reps[i]!, reserve: 0 }));

const near = (actual: number, expected: number, relative = 1e-5) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));

/** Squares of reps, which may be nothing but rounding. */
const close = (actual: number, expected: number) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-6 * (1 + expected));

const chart = setsOf(handbook.seen.percent, handbook.seen.reps);

/** An athlete with a true maximum and constant, and sets from heavy to light scattered about their curve. */
const scattered = fc
  .record({
    maximum: fc.double({ min: 30, max: 400, noNaN: true }),
    constant: fc.double({ min: 8, max: 80, noNaN: true }),
    reps: fc.uniqueArray(fc.integer({ min: 1, max: 30 }), { minLength: 4, maxLength: 12 }),
    scatter: fc.array(fc.double({ min: -0.02, max: 0.02, noNaN: true }), {
      minLength: 12,
      maxLength: 12,
    }),
  })
  .map(({ maximum, constant, reps, scatter }) =>
    reps.map((t, i) => ({
      load: (maximum / (1 + (t - 1) / constant)) * (1 + scatter[i]!),
      reps: t,
      reserve: 0,
    })),
  )
  .filter((sets) => {
    const [longest, shortest] = [Math.max, Math.min].map((f) => f(...sets.map((s) => s.reps)));
    return shortest! <= 3 && longest! - shortest! >= 10;
  });

/** The squares that reps to failure leave about the curve of this maximum, with the constant that suits it best. */
function squaresWith(sets: readonly CurveSet[], maximum: number): number {
  const points = sets.map(({ load, reps }) => ({ x: maximum / load - 1, y: reps - 1 }));
  const constant =
    points.reduce((sum, { x, y }) => sum + x * y, 0) /
    points.reduce((sum, { x }) => sum + x * x, 0);
  return points.reduce((sum, { x, y }) => sum + (y - constant * x) ** 2, 0);
}

describe("a lifter's own curve", () => {
  it("is what R's lm finds for the handbook's table, with Fieller's interval", () => {
    const expected: Partial<CurveFit> = {
      oneRepMax: 99.6722264,
      oneRepMaxLow: 98.601236,
      oneRepMaxHigh: 100.88412,
      constant: 27.8884727,
      constantLow: 25.9501823,
      constantHigh: 29.8267632,
      repsAt80: 7.97211817,
      residualSd: 0.234177624,
      rSquared: 0.994682263,
    };
    const fit = fitCurve(chart);
    expect(fit.sets).toBe(10);
    for (const [key, value] of Object.entries(expected)) {
      near(fit[key as keyof CurveFit], value, 1e-8);
    }
  });

  it("leaves the reps smaller squares than any other maximum, whatever its constant", () => {
    fc.assert(
      fc.property(scattered, fc.double({ min: 0.5, max: 2, noNaN: true }), (sets, share) => {
        const { oneRepMax, residualSd } = fitCurve(sets);
        const least = squaresWith(sets, oneRepMax);
        close(least, residualSd ** 2 * (sets.length - 2));
        expect(squaresWith(sets, oneRepMax * share)).toBeGreaterThanOrEqual(least - 1e-9);
      }),
    );
  });

  it("ends the maximum's interval where the best curve of that maximum fails an F test", () => {
    fc.assert(
      fc.property(scattered, (sets) => {
        const { oneRepMax, oneRepMaxLow, oneRepMaxHigh, residualSd } = fitCurve(sets);
        expect(oneRepMaxLow <= oneRepMax && oneRepMax <= oneRepMaxHigh).toBe(true);
        // The squared t quantile is the F quantile on 1 and n − 2.
        const allowed = criticalValue(0.95, sets.length - 2) ** 2 * residualSd ** 2;
        const least = squaresWith(sets, oneRepMax);
        close(squaresWith(sets, oneRepMaxLow) - least, allowed);
        close(squaresWith(sets, oneRepMaxHigh) - least, allowed);
      }),
    );
  });

  it("gives exact curves back, in kilograms, pounds or anything, and from three sets", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 1e9, noNaN: true }),
        fc.double({ min: 3, max: 200, noNaN: true }),
        fc.uniqueArray(fc.integer({ min: 1, max: 30 }), { minLength: 3, maxLength: 8 }),
        (maximum, constant, reps) => {
          const loads = reps.map((t) => maximum / (1 + (t - 1) / constant));
          const fit = fitCurve(setsOf(loads, reps));
          near(fit.oneRepMax, maximum, 1e-6);
          near(fit.constant, constant, 1e-6);
          near(fit.repsAt80, 1 + constant / 4, 1e-6);
          near(fit.rSquared, 1, 1e-9);
          expect(fit.residualSd).toBeLessThan(1e-6);
        },
      ),
    );
  });

  it("scales with the unit of load, its spread being in reps", () => {
    const pounds = 2.2046226218;
    const fit = fitCurve(chart);
    const other = fitCurve(chart.map((set) => ({ ...set, load: set.load * pounds })));
    near(other.oneRepMaxLow, fit.oneRepMaxLow * pounds, 1e-8);
    near(other.constantHigh, fit.constantHigh, 1e-8);
    near(other.residualSd, fit.residualSd, 1e-8);
  });

  it("counts reserve as reps not done, but trusts calls less: all of them may be off alike", () => {
    const failure = fitCurve(chart);
    const called = fitCurve(chart.map((set) => ({ ...set, reps: 1, reserve: set.reps - 1 })));
    expect(called.oneRepMax).toBe(failure.oneRepMax);
    expect(called.constant).toBe(failure.constant);
    // A bias with a standard deviation of half a rep, on top of what the scatter says of the constant.
    const t = criticalValue(0.95, 8);
    const reach = (fit: CurveFit) => (fit.constantHigh - fit.constant) / t;
    near(reach(called) ** 2 - reach(failure) ** 2, 0.25, 1e-9);
    expect(called.oneRepMaxHigh - called.oneRepMaxLow).toBeGreaterThan(
      failure.oneRepMaxHigh - failure.oneRepMaxLow,
    );
  });

  it("is surer where less confidence is asked", () => {
    const [narrow, wide] = [fitCurve(chart, 0.8), fitCurve(chart, 0.95)];
    // t on 8 degrees of freedom: 1.39682 at 80%, 2.30600 at 95%.
    near(
      (narrow.constantHigh - narrow.constant) / (wide.constantHigh - wide.constant),
      1.39681531 / 2.30600414,
      1e-6,
    );
    expect(narrow.oneRepMaxLow).toBeGreaterThan(wide.oneRepMaxLow);
    expect(narrow.oneRepMaxHigh).toBeLessThan(wide.oneRepMaxHigh);
  });

  it("has no answer where load does not fall as reps rise", () => {
    const message = "load does not fall as the reps rise";
    expect(() => fitCurve(setsOf([80, 90, 100], [3, 5, 8]))).toThrow(message);
    expect(() => fitCurve(setsOf([80, 90, 100], [5, 5, 5]))).toThrow(message);
    // So steep that the line promises one rep and less with no load at all.
    expect(() => fitCurve(setsOf([100, 50, 25], [5, 9, 17]))).toThrow(message);
  });

  it("has no answer where the sets are too alike to tell the maximum", () => {
    const message = "the sets are too alike: add heavier or lighter ones";
    expect(() => fitCurve(setsOf([100, 97.5, 100, 97.5], [5, 5, 4, 7]))).toThrow(message);
    const called = [100, 99, 98].map((load, i) => ({ load, reps: 5, reserve: i + 1 }));
    expect(() => fitCurve(called)).not.toThrow("does not fall");
  });

  it("has no answer from too few sets or one load", () => {
    expect(() => fitCurve(chart.slice(0, 2))).toThrow("a curve takes at least 3 sets; found 2");
    expect(() => fitCurve([])).toThrow("found 0");
    const message = "every set has the same load; a curve takes at least 2 different ones";
    expect(() => fitCurve(setsOf([100, 100, 100], [5, 6, 8]))).toThrow(message);
    expect(() => fitCurve(setsOf([0.1 + 0.2, 0.3, 0.3], [3, 5, 8]))).toThrow(message);
    expect(fitCurve(setsOf([100, 98, 80], [1, 2, 8])).sets).toBe(3);
  });

  it("names the row that cannot be right", () => {
    const withThird = (change: Partial<CurveSet>) => () =>
      fitCurve(chart.map((set, i) => (i === 2 ? { ...set, ...change } : set)));
    expect(withThird({ reps: 29, reserve: 2 })).toThrow(
      "row 3: reps plus reserve is 31; expected at most 30 for a curve",
    );
    expect(withThird({ load: 0, row: 12 })).toThrow("row 12: load is 0; expected above 0");
    expect(withThird({ reps: 0.5 })).toThrow("row 3: reps is 0.5; expected at least 1");
    expect(withThird({ reserve: -1 })).toThrow("row 3: reserve is -1; expected at least 0");
  });
});
