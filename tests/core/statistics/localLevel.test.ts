import fc from "fast-check";
import { describe, expect, it } from "vitest";
import nile from "../../../shared/reference/nile.json";
import {
  filterLevels,
  levelLogLikelihood,
  smoothLevels,
  type LevelSeries,
} from "../../../src/core/statistics/localLevel";
import { denseLevels, denseLogLikelihood } from "./denseNormal";

const flow: LevelSeries = {
  times: nile.flow.map((_, i) => nile.firstYear + i),
  values: nile.flow,
  knownVariances: nile.flow.map(() => 0),
};
const { walk, noise } = nile.variances;

const positive = (max: number) => fc.double({ min: 0.01, max, noNaN: true });
const observation = fc.record({
  gap: fc.integer({ min: 1, max: 40 }),
  value: fc.double({ min: -50, max: 50, noNaN: true }),
  known: positive(20),
});
const anySeries = fc
  .array(observation, { minLength: 2, maxLength: 12 })
  .map((rows): LevelSeries => {
    let time = 0;
    return {
      times: rows.map(({ gap }) => (time += gap)),
      values: rows.map(({ value }) => value),
      knownVariances: rows.map(({ known }) => known),
    };
  });
const anyVariances = fc.record({ walk: positive(5), noise: positive(20) });

const near = (actual: number, expected: number, relative = 1e-6) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(
    relative * Math.max(Math.abs(expected), 1),
  );

describe("the local-level model", () => {
  it("has the log-likelihood computed in R for the Nile at the variances of Durbin and Koopman 2012", () => {
    near(levelLogLikelihood(flow, { walk, noise }), nile.logLikelihood.value);
  });

  it("smooths the Nile as R's KalmanSmooth does", () => {
    const smoothed = smoothLevels(flow, { walk, noise });
    for (const { year, level, variance } of nile.smoothed.levels) {
      near(smoothed.means[year - nile.firstYear]!, level);
      near(smoothed.variances[year - nile.firstYear]!, variance);
    }
  });

  it("has the likelihood of the whole normal distribution written out, at any distances in time", () => {
    near(levelLogLikelihood(flow, { walk, noise }), denseLogLikelihood(flow, { walk, noise }));
    fc.assert(
      fc.property(anySeries, anyVariances, (series, variances) => {
        const dense = denseLogLikelihood(series, variances);
        near(levelLogLikelihood(series, variances), dense, 1e-8);
      }),
    );
  });

  it("smooths to the means, variances and first-last covariance of that distribution", () => {
    fc.assert(
      fc.property(anySeries, anyVariances, (series, variances) => {
        const dense = denseLevels(series, variances);
        const smoothed = smoothLevels(series, variances);
        smoothed.means.forEach((mean, i) => near(mean, dense.means[i]!, 1e-7));
        smoothed.variances.forEach((value, i) => near(value, dense.covariance[i]![i]!, 1e-7));
        near(smoothed.firstLastCovariance, dense.covariance[0]!.at(-1)!, 1e-7);
      }),
    );
  });

  it("sees the last level alike from the filter and the smoother, and the first from one observation", () => {
    const filtered = filterLevels(flow, { walk, noise });
    const smoothed = smoothLevels(flow, { walk, noise });
    expect(smoothed.means.at(-1)).toBe(filtered.means.at(-1));
    expect(smoothed.variances.at(-1)).toBe(filtered.variances.at(-1));
    expect(filtered.means[0]).toBe(1120);
    expect(filtered.variances[0]).toBe(noise);
  });

  it("is one weighted mean for all times where the level does not wander", () => {
    const series = { times: [0, 3, 10], values: [10, 13, 16], knownVariances: [1, 2, 4] };
    const { means, variances, firstLastCovariance } = smoothLevels(series, { walk: 0, noise: 0 });
    const precision = 1 + 1 / 2 + 1 / 4;
    for (const mean of means) near(mean, (10 + 13 / 2 + 16 / 4) / precision, 1e-12);
    for (const variance of [...variances, firstLastCovariance])
      near(variance, 1 / precision, 1e-12);
  });

  it("follows every value where only the level has variance", () => {
    const series = { times: [0, 1, 5], values: [10, 13, 16], knownVariances: [0, 0, 0] };
    expect(smoothLevels(series, { walk: 1, noise: 0 }).means).toEqual([10, 13, 16]);
  });

  it("says so when nothing has any variance", () => {
    const series = { times: [0, 1], values: [10, 13], knownVariances: [0, 0] };
    expect(levelLogLikelihood(series, { walk: 0, noise: 0 })).toBe(-Infinity);
    expect(() => smoothLevels(series, { walk: 0, noise: 0 })).toThrow("have no variance");
  });
});
