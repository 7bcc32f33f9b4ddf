import fc from "fast-check";
import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { describe, expect, it } from "vitest";
import handbook from "../../../shared/reference/handbook.json";
import { fitCurve, type CurveFit, type CurveSet } from "../../../src/core/strength/fitCurve";

const setsOf = (loads: readonly number[], reps: readonly number[]): CurveSet[] =>
  loads.map((load, i) => ({ load, reps: reps[i]!, reserve: 0 }));

const near = (actual: number, expected: number, relative = 1e-5) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));

const chart = setsOf(handbook.seen.percent, handbook.seen.reps);

/** An athlete with a true maximum and constant, and sets scattered about their curve. */
const scattered = fc
  .record({
    maximum: fc.double({ min: 30, max: 400, noNaN: true }),
    constant: fc.double({ min: 8, max: 80, noNaN: true }),
    reps: fc.uniqueArray(fc.integer({ min: 1, max: 30 }), { minLength: 4, maxLength: 12 }),
    scatter: fc.array(fc.double({ min: -0.04, max: 0.04, noNaN: true }), {
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
    return longest! - shortest! >= 8;
  });

const squaresAt = (sets: readonly CurveSet[], maximum: number, constant: number) =>
  sets.reduce(
    (sum, { load, reps }) => sum + (load - maximum / (1 + (reps - 1) / constant)) ** 2,
    0,
  );

describe("an athlete's own curve", () => {
  it("is what R's nls finds for the handbook's table, intervals from its standard errors and qt", () => {
    const expected: Partial<CurveFit> = {
      oneRepMax: 99.473782,
      oneRepMaxLow: 98.5247969,
      oneRepMaxHigh: 100.422767,
      constant: 28.3194209,
      constantLow: 26.3902684,
      constantHigh: 30.2485734,
      repsAt80: 8.07985523,
      residualSd: 0.626398404,
      rSquared: 0.994666101,
    };
    const fit = fitCurve(chart);
    expect(fit.sets).toBe(10);
    for (const [key, value] of Object.entries(expected)) near(fit[key as keyof CurveFit], value);
  });

  it("is what an independent library finds (ml-levenberg-marquardt)", () => {
    fc.assert(
      fc.property(scattered, (sets) => {
        const fit = fitCurve(sets);
        const other = levenbergMarquardt(
          { x: sets.map(({ reps }) => reps - 1), y: sets.map(({ load }) => load) },
          (parameters) => (x) => parameters[0]! / (1 + x / parameters[1]!),
          {
            initialValues: [fit.oneRepMax * 1.03, fit.constant * 0.95],
            maxIterations: 500,
            damping: 1e-2,
            gradientDifference: 1e-6,
            centralDifference: true,
            errorTolerance: 0,
          },
        );
        near(other.parameterValues[0]!, fit.oneRepMax, 1e-4);
        near(other.parameterValues[1]!, fit.constant, 1e-3);
        const squares = squaresAt(sets, fit.oneRepMax, fit.constant);
        const residualSd = Math.sqrt(squares / (fit.sets - 2));
        expect(Math.abs(fit.residualSd - residualSd)).toBeLessThan(1e-9 * fit.oneRepMax);
      }),
      { numRuns: 30 },
    );
  });

  it("leaves smaller squares than any other maximum and constant", () => {
    const share = fc.double({ min: 0.2, max: 5, noNaN: true });
    fc.assert(
      fc.property(
        scattered,
        fc.array(fc.tuple(share, share), { minLength: 30 }),
        (sets, others) => {
          const { oneRepMax, constant } = fitCurve(sets);
          const least = squaresAt(sets, oneRepMax, constant);
          for (const [m, c] of others) {
            const squares = squaresAt(sets, oneRepMax * m, constant * c);
            expect(squares).toBeGreaterThanOrEqual(least * (1 - 1e-9));
          }
        },
      ),
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
          expect(fit.residualSd).toBeLessThan(1e-8 * maximum);
        },
      ),
    );
  });

  it("scales with the unit of load", () => {
    const pounds = 2.2046226218;
    const fit = fitCurve(chart);
    const other = fitCurve(chart.map((set) => ({ ...set, load: set.load * pounds })));
    near(other.oneRepMaxLow, fit.oneRepMaxLow * pounds, 1e-8);
    near(other.constantHigh, fit.constantHigh, 1e-8);
    near(other.residualSd, fit.residualSd * pounds, 1e-8);
  });

  it("counts reserve as reps not done", () => {
    const spared = chart.map((set) => ({ ...set, reps: 1, reserve: set.reps - 1 }));
    expect(fitCurve(spared)).toEqual(fitCurve(chart));
  });

  it("is surer where less confidence is asked", () => {
    const [narrow, wide] = [fitCurve(chart, 0.8), fitCurve(chart, 0.95)];
    // t on 8 degrees of freedom: 1.39682 at 80%, 2.30600 at 95%.
    near(
      (narrow.constantHigh - narrow.constant) / (wide.constantHigh - wide.constant),
      1.39681531 / 2.30600414,
      1e-6,
    );
    near(narrow.constant - narrow.constantLow, narrow.constantHigh - narrow.constant, 1e-9);
  });

  it("has no answer where load does not fall as reps rise", () => {
    const message = "load does not fall";
    expect(() => fitCurve(setsOf([80, 90, 100], [3, 5, 8]))).toThrow(message);
    expect(() => fitCurve(setsOf([100, 100, 100], [3, 5, 8]))).toThrow(message);
    expect(() => fitCurve(setsOf([0.1 + 0.2, 0.3, 0.3], [3, 5, 8]))).toThrow(message);
  });

  it("has no answer where maximum and constant cannot be told apart", () => {
    const message = "one-rep max from the constant";
    // Load × (t − 1) is constant or falling: any maximum does, if it is only large enough.
    expect(() => fitCurve(setsOf([100, 50, 25], [5, 9, 17]))).toThrow(message);
    expect(() => fitCurve(setsOf([100, 40, 12], [5, 9, 17]))).toThrow(message);
    expect(() =>
      fitCurve(setsOf([100, 99.9999999, 99.9999998], [9, 9.0000001, 9.0000002])),
    ).toThrow();
  });

  it("has no answer from too few sets or one number of reps", () => {
    expect(() => fitCurve(chart.slice(0, 2))).toThrow("a curve takes at least 3 sets; found 2");
    expect(() => fitCurve([])).toThrow("found 0");
    expect(() => fitCurve(setsOf([100, 101, 99], [5, 5, 5]))).toThrow("at least 2 different ones");
    expect(fitCurve(setsOf([100, 98, 80], [1, 1, 8])).sets).toBe(3);
  });

  it("names the row that cannot be right", () => {
    const withThird = (change: Partial<CurveSet>) => () =>
      fitCurve(chart.map((set, i) => (i === 2 ? { ...set, ...change } : set)));
    expect(withThird({ reps: 29, reserve: 2 })).toThrow(
      "row 3: reps plus reserve is 31; a curve is fitted up to 30",
    );
    expect(withThird({ load: 0, row: 12 })).toThrow("row 12: load is 0; expected above 0");
    expect(withThird({ reps: 0.5 })).toThrow("row 3: reps is 0.5; expected at least 1");
    expect(withThird({ reserve: -1 })).toThrow("row 3: reserve is -1; expected at least 0");
  });
});
