import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lineModel } from "../../../src/core/studies/lineModel";
import { meanModel } from "../../../src/core/studies/meanModel";
import { remlVariance } from "../../../src/core/studies/remlVariance";
import {
  restrictedLogLikelihood,
  restrictedSlope,
} from "../../../src/core/studies/restrictedLikelihood";
import { exactSlopeSign } from "./exactSlope";
import { expectNear } from "./matching";
import { bcg, sixStudies } from "./published";

const squares = (values: readonly number[]) => values.map((value) => value ** 2);
const reml = (effects: readonly number[], standardErrors: readonly number[]) =>
  remlVariance(meanModel(effects), squares(standardErrors));

/** Studies whose effects scatter up to several of their own standard errors, so that peaks lie anywhere. */
const study = fc
  .tuple(
    fc.integer({ min: -3000, max: 3000 }),
    fc.double({ min: -4, max: 4, noNaN: true }),
    fc.integer({ min: 1, max: 60 }),
  )
  .map(([power, distance, dose]) => {
    const standardError = 10 ** (power / 1000);
    return { standardError, effect: distance * standardError, dose };
  });
const tameStudy = fc.record({
  standardError: fc.double({ min: 0.05, max: 2, noNaN: true }),
  effect: fc.double({ min: -5, max: 5, noNaN: true }),
  dose: fc.integer({ min: 1, max: 60 }),
});
const columns = (studies: readonly { standardError: number; effect: number; dose: number }[]) => ({
  effects: studies.map(({ effect }) => effect),
  variances: studies.map(({ standardError }) => standardError ** 2),
  doses: studies.map(({ dose }) => dose),
});
const severalDoses = (studies: readonly { dose: number }[]) =>
  new Set(studies.map(({ dose }) => dose)).size > 1;

const sampleVariance = (values: readonly number[]) => {
  const middle = values.reduce((a, b) => a + b, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1);
};

/**
 * The restricted likelihood another way: the studies enter one by one, the most precise first, each judged
 * by how well the mean of those before it foretells it.
 */
function oneByOne(effects: readonly number[], variances: readonly number[], between: number) {
  const order = effects.map((_, i) => i).sort((a, b) => variances[a]! - variances[b]!);
  let logLikelihood = 0;
  let weight = 0;
  let middle = 0;
  for (const i of order) {
    const own = variances[i]! + between;
    if (weight > 0) {
      const spread = own + 1 / weight;
      logLikelihood -= (Math.log(spread) + (effects[i]! - middle) ** 2 / spread) / 2;
    }
    weight += 1 / own;
    middle += (effects[i]! - middle) / own / weight;
  }
  return logLikelihood;
}

/** Proves an answer by the exact slope around it: rising just below, falling just above. */
function expectPeak(
  answer: number,
  effects: readonly number[],
  variances: readonly number[],
  doses?: readonly number[],
): void {
  const width = 1e-10 * (answer + Math.min(...variances));
  expect(exactSlopeSign(effects, variances, answer + width, doses)).toBe(-1);
  if (answer > width) expect(exactSlopeSign(effects, variances, answer - width, doses)).toBe(1);
}

describe("the variance between studies by restricted likelihood", () => {
  it("is metafor's for the BCG trials, with and without latitude", () => {
    // metafor::rma with threshold 1e-12.
    expectNear(reml(bcg.effects, bcg.standardErrors), 0.31324306, 1e-7);
    const line = lineModel(bcg.doses, bcg.effects);
    expectNear(Math.sqrt(remlVariance(line, squares(bcg.standardErrors))), 0.276310781, 1e-7);
  });

  it("is exact to 1e-10 for the published studies, proved in whole numbers", () => {
    const six = squares(sixStudies.standardErrors);
    expectPeak(reml(sixStudies.effects, sixStudies.standardErrors), sixStudies.effects, six);
    const variances = squares(bcg.standardErrors);
    expectPeak(reml(bcg.effects, bcg.standardErrors), bcg.effects, variances);
    const ofLine = remlVariance(lineModel(bcg.doses, bcg.effects), variances);
    expectPeak(ofLine, bcg.effects, variances, bcg.doses);
  });

  it("is exact to 1e-10 with standard errors from 1e-3 to 1e3, proved in whole numbers", () => {
    fc.assert(
      fc.property(fc.array(study, { minLength: 2, maxLength: 5 }), (studies) => {
        const { effects, variances } = columns(studies);
        expectPeak(remlVariance(meanModel(effects), variances), effects, variances);
      }),
      { numRuns: 300 },
    );
  });

  it("is not lost beside one study a million times as precise as the rest", () => {
    // The two coarse studies lie just far enough from the precise one for a spread: the precise study's
    // own residual, far below its rounding, decides.
    for (const beyond of [5e-4, 5e-5, 5e-6]) {
      const coarse = 0.3 + Math.sqrt(2e6 / 3) + beyond;
      const effects = [0.3, coarse, coarse];
      const answer = reml(effects, [1e-3, 1e3, 1e3]);
      expect(exactSlopeSign(effects, [1e-6, 1e6, 1e6], answer * (1 - 1e-5))).toBe(1);
      expect(exactSlopeSign(effects, [1e-6, 1e6, 1e6], answer * (1 + 1e-5))).toBe(-1);
    }
  });

  it("is exact to 1e-10 about a line too, proved in whole numbers", () => {
    const several = fc.array(study, { minLength: 3, maxLength: 5 }).filter(severalDoses);
    fc.assert(
      fc.property(several, (studies) => {
        const { effects, variances, doses } = columns(studies);
        const answer = remlVariance(lineModel(doses, effects), variances);
        expectPeak(answer, effects, variances, doses);
      }),
      { numRuns: 150 },
    );
  });

  it("is at least as likely as any value of a fine grid, the likelihood summed another way", () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(study, tameStudy), { minLength: 2, maxLength: 8 }),
        (studies) => {
          const { effects, variances } = columns(studies);
          const best = oneByOne(effects, variances, remlVariance(meanModel(effects), variances));
          const [least, most] = [
            Math.min(...variances),
            Math.max(...variances, ...squares(effects)),
          ];
          const highest = Array.from({ length: 2000 }, (_, i) => i / 1999)
            .map((share) => least * ((1 + (10 * most) / least) ** share - 1))
            .reduce(
              (top, between) => Math.max(top, oneByOne(effects, variances, between)),
              -Infinity,
            );
          expect(highest).toBeLessThanOrEqual(best + 1e-9);
        },
      ),
      { numRuns: 150 },
    );
  });

  it("is the higher of two peaks, whichever it is", () => {
    // Likelihoods with two peaks, found by search; each with the place of its lower and its higher one.
    const twoPeaks = [
      // The higher is the one away from 0.
      {
        effects: [0.2, -1.6, 0.3, 0.45, -0.2],
        errors: [0.05, 1, 0.1, 0.2, 0.2],
        lower: 0,
        at: 0.0154,
      },
      // The higher is at 0, where a search that follows the slope from above would never come.
      { effects: [2.95, -0.1, -1.2, -0.15], errors: [1, 0.05, 1, 0.05], lower: 1.8, at: 0 },
      // Both away from 0, the nearer higher, and the farther higher.
      { effects: [0.1, 4, 0.5, -5.8, 0.25], errors: [0.1, 2, 0.2, 2, 0.2], lower: 4.6, at: 0.0198 },
      { effects: [-0.55, 5.5, -0.15], errors: [0.2, 2, 0.05], lower: 0.073, at: 6.976 },
    ];
    for (const { effects, errors, lower, at } of twoPeaks) {
      const variances = squares(errors);
      const slope = (between: number) => restrictedSlope(meanModel(effects), variances, between);
      if (lower > 0) expect(slope(0.7 * lower)).toBeGreaterThan(0);
      expect(slope(lower === 0 ? 0 : 1.4 * lower)).toBeLessThan(0);
      const answer = reml(effects, errors);
      if (at === 0) expect(answer).toBe(0);
      else expectNear(answer, at, 0.01);
      expect(oneByOne(effects, variances, answer)).toBeGreaterThan(
        oneByOne(effects, variances, lower),
      );
    }
  });

  it("is what two studies' distance leaves beyond their own variances, or 0", () => {
    fc.assert(
      fc.property(study, study, (a, b) => {
        const closed =
          ((a.effect - b.effect) ** 2 - a.standardError ** 2 - b.standardError ** 2) / 2;
        const answer = reml([a.effect, b.effect], [a.standardError, b.standardError]);
        if (closed <= 0) expect(answer).toBe(0);
        else
          expectNear(answer, closed, 1e-9 * (1 + a.effect ** 2 / closed + b.effect ** 2 / closed));
      }),
    );
    expect(reml([1, 3], [1, 1])).toBeCloseTo(1, 14);
    expect(reml([1, 2], [1, 1])).toBe(0);
  });

  it("is the variance of equally precise studies less their own, or 0", () => {
    expectNear(reml([1, 2, 3, 4, 10], [1, 1, 1, 1, 1]), 12.5 - 1, 1e-14);
    expect(reml([1, 2, 3], [1.01, 1.01, 1.01])).toBe(0);
    // About a line: residual sum of squares 0.175 (effects 1, 2, 3.5, 4 over doses 1 to 4) on 2 df.
    const line = remlVariance(lineModel([1, 2, 3, 4], [1, 2, 3.5, 4]), [0.01, 0.01, 0.01, 0.01]);
    expectNear(line, 0.175 / 2 - 0.01, 1e-12);
  });

  it("is 0, rounding apart, where the scatter is just what the studies' own errors explain", () => {
    const several = fc.array(tameStudy, { minLength: 2, maxLength: 9 });
    fc.assert(
      fc.property(several, (studies) => {
        const { effects } = columns(studies);
        const variance = Math.max(1e-6, sampleVariance(effects));
        const answer = remlVariance(
          meanModel(effects),
          effects.map(() => variance),
        );
        expect(answer).toBeGreaterThanOrEqual(0);
        expect(answer).toBeLessThan(1e-12 * variance);
      }),
      { numRuns: 1000 },
    );
  });

  it("is 0 for effects all alike, however unlike their precision", () => {
    expect(reml([0.1, 0.1, 0.1, 0.1], [1e-3, 1, 5, 1e3])).toBe(0);
    expect(remlVariance(lineModel([1, 2, 3], [0.1, 0.2, 0.3]), [1e-6, 1, 1e6])).toBe(0);
  });

  it("goes with the square of the unit, a million times larger or smaller", () => {
    fc.assert(
      fc.property(
        fc.array(tameStudy, { minLength: 2, maxLength: 8 }),
        fc.constantFrom(1e6, 1e-6),
        (studies, unit) => {
          const { effects, variances } = columns(studies);
          const answer = remlVariance(meanModel(effects), variances);
          const scaled = remlVariance(
            meanModel(effects.map((effect) => effect * unit)),
            variances.map((variance) => variance * unit ** 2),
          );
          const off = Math.abs(scaled / unit ** 2 - answer);
          expect(off).toBeLessThanOrEqual(1e-10 * (answer + Math.min(...variances)));
        },
      ),
    );
  });

  it("does not care where the effects start", () => {
    const shifted = bcg.effects.map((effect) => effect + 1000);
    expectNear(reml(shifted, bcg.standardErrors), reml(bcg.effects, bcg.standardErrors), 1e-10);
  });
});

describe("the restricted likelihood", () => {
  it("is the one summed study by study, but for its constant", () => {
    fc.assert(
      fc.property(fc.array(study, { minLength: 2, maxLength: 8 }), (studies) => {
        const { effects, variances } = columns(studies);
        const rise = (of: (between: number) => number) => of(2) - of(0.01);
        const ours = rise((t) => restrictedLogLikelihood(meanModel(effects), variances, t));
        const other = rise((t) => oneByOne(effects, variances, t));
        expect(Math.abs(ours - other)).toBeLessThan(1e-9 * (1 + Math.abs(other)));
      }),
    );
  });

  it("has the slope it should, for a mean and for a line", () => {
    for (const model of [meanModel(bcg.effects), lineModel(bcg.doses, bcg.effects)]) {
      const variances = squares(bcg.standardErrors);
      const at = (between: number) => restrictedLogLikelihood(model, variances, between);
      for (const between of [0.01, 0.1, 1]) {
        const step = between * 1e-5;
        const numeric = (at(between + step) - at(between - step)) / (2 * step);
        expectNear(restrictedSlope(model, variances, between), numeric, 1e-5);
      }
    }
  });
});
