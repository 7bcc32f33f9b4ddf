import fc from "fast-check";
import { describe, expect, it } from "vitest";
import nile from "../../../shared/reference/nile.json";
import {
  filterRegression,
  levelRegression,
  smoothRegression,
  type LevelVariances,
  type Observation,
  type SlopePrior,
} from "../../../src/core/statistics/levelRegression";
import { minimiseBounded } from "../../../src/core/statistics/minimise";
import { cellAt, elementAt } from "../../present";
import { denseFit } from "./denseNormal";

const years = nile.flow.map((_, i) => nile.firstYear + i);
const flow = levelRegression(
  years,
  nile.flow.map((value, place) => ({ place, value, columns: [], variance: 0 })),
  [],
);
const { walk, noise } = nile.variances;

const near = (actual: number, expected: number, relative = 1e-6) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(
    relative * Math.max(Math.abs(expected), 1),
  );

const smooth = (
  times: readonly number[],
  observations: readonly Observation[],
  slopes: readonly SlopePrior[],
  variances: LevelVariances,
) => {
  const model = levelRegression(times, observations, slopes);
  const filtered = filterRegression(model, variances);
  return { ...filtered, ...smoothRegression(model, variances, filtered) };
};

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyVariances = fc.record({ walk: between(0, 5), noise: between(0, 20) });

/** Observations at up to six times, several at one, with a drift of the level and two slopes of their own. */
const anyModel = fc
  .array(
    fc.record({
      gap: fc.integer({ min: 1, max: 40 }),
      seen: fc.array(fc.tuple(between(-50, 50), between(-3, 3), between(-3, 3), between(0.1, 20)), {
        minLength: 1,
        maxLength: 3,
      }),
    }),
    { minLength: 3, maxLength: 6 },
  )
  .map((rows) => {
    let time = 45_700;
    const times = rows.map(({ gap }) => (time += gap));
    const elapsed = times.map((one) => one - Math.min(...times));
    const observations = rows.flatMap(({ seen }, place) =>
      seen.map(([value, a, b, variance]): Observation => ({
        place,
        value,
        columns: [elementAt(elapsed, place), a, b],
        variance,
      })),
    );
    const slopes = [
      { sd: 0.3, inLevel: true },
      { sd: 2, inLevel: false },
      { sd: 0.5, inLevel: false },
    ];
    return { times, observations, slopes };
  });

describe("a regression about a wandering level", () => {
  it("has the log-likelihood computed in R for the Nile at the variances of Durbin and Koopman 2012", () => {
    const { logLikelihood } = filterRegression(flow, { walk, noise });
    const constant = ((nile.flow.length - 1) * Math.log(2 * Math.PI)) / 2;
    near(logLikelihood - constant, nile.logLikelihood.value);
  });

  it("is likeliest for the Nile at the variances of Durbin and Koopman 2012", () => {
    const surprise = (logWalk: number, logNoise: number) =>
      -filterRegression(flow, { walk: Math.exp(logWalk), noise: Math.exp(logNoise) }).logLikelihood;
    let [bestWalk, bestNoise] = [5, 5];
    for (let round = 0; round < 30; round++) {
      bestWalk = minimiseBounded((w) => surprise(w, bestNoise), 0, 12, 1e-7).at;
      bestNoise = minimiseBounded((n) => surprise(bestWalk, n), 0, 12, 1e-7).at;
    }
    near(Math.exp(bestWalk), walk, nile.variances.match);
    near(Math.exp(bestNoise), noise, nile.variances.match);
  });

  it("smooths the Nile as R's KalmanSmooth does", () => {
    const filtered = filterRegression(flow, { walk, noise });
    const { level, covariance } = smoothRegression(flow, { walk, noise }, filtered);
    for (const { year, level: expected, variance } of nile.smoothed.levels) {
      const at = year - nile.firstYear;
      near(level(at), expected);
      near(covariance(at, at), variance);
    }
  });

  it("has the likelihood of the whole normal distribution written out, but for a constant", () => {
    fc.assert(
      fc.property(anyModel, anyVariances, anyVariances, (model, one, other) => {
        const summed = levelRegression(model.times, model.observations, model.slopes);
        const ours = (variances: LevelVariances) =>
          filterRegression(summed, variances).logLikelihood;
        const dense = (variances: LevelVariances) => denseFit(model, variances).logLikelihood;
        near(ours(one) - ours(other), dense(one) - dense(other), 1e-7);
      }),
    );
  });

  it("finds the slopes, the levels and their covariances of that distribution", () => {
    fc.assert(
      fc.property(anyModel, anyVariances, (model, variances) => {
        const dense = denseFit(model, variances);
        const { level, covariance, slopes } = smooth(
          model.times,
          model.observations,
          model.slopes,
          variances,
        );
        slopes.forEach((slope, s) => near(slope, elementAt(dense.slopes, s), 1e-7));
        dense.levels.forEach((expected, i) => near(level(i), expected, 1e-7));
        dense.covariance.forEach((row, i) =>
          row.forEach((value, j) => near(covariance(i, j), value, 1e-7)),
        );
      }),
    );
  });

  it("is one weighted mean for all times where nothing wanders", () => {
    const observations = [10, 13, 16].map((value, place) => ({
      place,
      value,
      columns: [],
      variance: 2 ** place,
    }));
    const { level, covariance } = smooth([0, 3, 10], observations, [], { walk: 0, noise: 0 });
    const precision = 1 + 1 / 2 + 1 / 4;
    for (const i of [0, 1, 2]) near(level(i), (10 + 13 / 2 + 16 / 4) / precision, 1e-12);
    near(covariance(0, 2), 1 / precision, 1e-12);
    near(covariance(1, 1), 1 / precision, 1e-12);
  });

  it("follows every value where only the level has variance", () => {
    const observations = [10, 13, 16].map((value, place) => ({
      place,
      value,
      columns: [],
      variance: 0,
    }));
    const { level } = smooth([0, 1, 5], observations, [], { walk: 1, noise: 0 });
    expect([0, 1, 2].map(level)).toEqual([10, 13, 16]);
  });

  it("cannot tell a slope from the level where its column never changes, and keeps its prior", () => {
    const observations = [10, 13, 16].map((value, place) => ({
      place,
      value,
      columns: [5],
      variance: 1,
    }));
    const slopes = [{ sd: 0.5, inLevel: false }];
    const found = smooth([0, 1, 2], observations, slopes, { walk: 1, noise: 0 });
    near(elementAt(found.slopes, 0), 0, 1e-12);
    near(cellAt(found.slopeCovariance, 0, 0), 0.25, 1e-12);
  });
});
