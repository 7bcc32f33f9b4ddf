import fc from "fast-check";
import { describe, expect, it } from "vitest";
import nile from "../../../shared/reference/nile.json";
import { fitLevelVariances } from "../../../src/core/statistics/levelVariances";
import { levelLogLikelihood, type LevelSeries } from "../../../src/core/statistics/localLevel";

const seriesOf = (values: readonly number[], known = 0, gap = 1): LevelSeries => ({
  times: values.map((_, i) => i * gap),
  values,
  knownVariances: values.map(() => known),
});

const within = (actual: number, expected: number, relative: number) =>
  expect(Math.abs(actual / expected - 1)).toBeLessThanOrEqual(relative);

describe("the two variances by maximum likelihood", () => {
  it("are those of Durbin and Koopman 2012 for the Nile", () => {
    const { walk, noise } = fitLevelVariances(seriesOf(nile.flow));
    within(walk, nile.variances.walk, nile.variances.match);
    within(noise, nile.variances.noise, nile.variances.match);
  });

  it("grow with the square of the unit of the values, and the walk's with that of time", () => {
    const thousandth = fitLevelVariances(seriesOf(nile.flow.map((flow) => flow / 1000)));
    within(thousandth.walk, nile.variances.walk / 1e6, 1e-3);
    within(thousandth.noise, nile.variances.noise / 1e6, 1e-3);
    const weeks = fitLevelVariances(seriesOf(nile.flow, 0, 7));
    within(weeks.walk, nile.variances.walk / 7, 1e-3);
    within(weeks.noise, nile.variances.noise, 1e-3);
  });

  it("leave to the noise what is not known of it beforehand", () => {
    const { walk, noise } = fitLevelVariances(seriesOf(nile.flow, 10_000));
    within(walk, nile.variances.walk, 1e-3);
    within(noise, nile.variances.noise - 10_000, 3e-3);
  });

  it("give a walk of exactly 0 to values that only alternate", () => {
    const { walk, noise } = fitLevelVariances(seriesOf([10, 12, 10, 12, 10, 12, 10, 12]));
    expect(walk).toBe(0);
    // The mean of all values explains them; the flat prior leaves n − 1 for the variance.
    within(noise, 8 / 7, 1e-5);
  });

  it("give a noise of exactly 0 to a level that goes on as it went", () => {
    const { walk, noise } = fitLevelVariances(seriesOf([10, 11, 12, 13, 14, 15, 16]));
    expect(noise).toBe(0);
    within(walk, 1, 1e-5);
  });

  it("are both exactly 0 where the known variances explain all there is, or nothing differs", () => {
    expect(fitLevelVariances(seriesOf([10, 10.1, 9.9, 10], 4))).toEqual({ walk: 0, noise: 0 });
    expect(fitLevelVariances(seriesOf([10, 10, 10], 4))).toEqual({ walk: 0, noise: 0 });
  });

  it("are at least as likely as any other pair, whatever the values and their times", () => {
    const row = fc.record({
      gap: fc.integer({ min: 1, max: 60 }),
      value: fc.double({ min: 3, max: 6, noNaN: true }),
      known: fc.double({ min: 1e-5, max: 1e-2, noNaN: true }),
    });
    const logarithm = fc.double({ min: -18, max: 3, noNaN: true });
    const other = fc.oneof(
      fc.constant([-Infinity, -Infinity] as const),
      fc.tuple(logarithm, logarithm),
      fc.tuple(fc.constant(-Infinity), logarithm),
      fc.tuple(logarithm, fc.constant(-Infinity)),
    );
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 3, maxLength: 25 }),
        fc.array(other, { minLength: 200, maxLength: 200 }),
        (rows, others) => {
          let time = 0;
          const series = {
            times: rows.map(({ gap }) => (time += gap)),
            values: rows.map(({ value }) => value),
            knownVariances: rows.map(({ known }) => known),
          };
          const best = levelLogLikelihood(series, fitLevelVariances(series));
          for (const [walk, noise] of others) {
            const variances = { walk: Math.exp(walk), noise: Math.exp(noise) };
            expect(levelLogLikelihood(series, variances)).toBeLessThanOrEqual(best + 1e-6);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
