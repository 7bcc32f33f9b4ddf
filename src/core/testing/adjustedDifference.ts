import type { Absent } from "../problem";
import { type EstimateTest, estimateTest, noTest } from "../statistics/estimateTest";
import {
  deviations,
  mean,
  sumOfProducts,
  sumOfSquaredDeviations,
  sumOfSquares,
} from "../statistics/moments";
import { type EstimatedVariance, sumDegreesOfFreedom } from "../statistics/satterthwaite";
import { zip } from "../zip";

/** One group's scores, an athlete a row in both. */
export interface BeforeAfter {
  readonly before: readonly number[];
  readonly after: readonly number[];
}

/** The adjusted difference and its test. */
export interface AdjustedDifference extends EstimateTest {
  readonly difference: number | Absent;
}

/** Two athletes around a slope leave degrees of freedom below 1, which no interval can be built on. */
const FEWEST = 3;
const TOO_FEW = `a test of the adjusted difference needs at least ${FEWEST} athletes in each group`;
const NO_RESIDUAL = "the scores do not vary about their line, so there is nothing to judge by";

/**
 * How much higher A ended than B *from the same starting score*: the score after, by group and score before
 * (analysis of covariance with one slope for both groups). It is fairer than comparing plain changes,
 * because who starts low tends to gain more, and it is more precise.
 *
 * Each group has its own residual variance, as in Welch's test: where the smaller group spreads more, one
 * variance for both finds differences that are not there in one trial of five. A group's share of the slope
 * costs it degrees of freedom, n − 1 less its part of the spread before.
 *
 * Source: Vickers and Altman 2001, BMJ 323:1123-1124, for the adjustment; Satterthwaite 1946, Biometrics
 * 2:110-114, for the degrees of freedom. How the two combine is our own, by equating expectations; its
 * coverage is measured in tests/bench/coverage.
 *
 * @param a - Group A, in the test's unit.
 * @param b - Group B, in the test's unit.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns The difference A − B with its interval and test, in the test's unit.
 */
export function adjustedDifference(
  a: BeforeAfter,
  b: BeforeAfter,
  confidence: number,
): AdjustedDifference {
  const tooFew = Math.min(a.before.length, b.before.length) < FEWEST;
  const [spreadA, spreadB] = [sumOfSquares(a.before), sumOfSquares(b.before)];
  const spread = spreadA + spreadB;
  if (spread === 0) {
    const flat = "the scores before do not vary, so there is nothing to adjust by";
    return none(tooFew ? TOO_FEW : flat);
  }
  const slope = (sumOfProducts(a.before, a.after) + sumOfProducts(b.before, b.after)) / spread;
  const gapBefore = mean(a.before) - mean(b.before);
  const difference = mean(a.after) - mean(b.after) - slope * gapBefore;
  if (tooFew) return { difference, ...noTest(TOO_FEW) };

  const leverage = gapBefore ** 2 / spread;
  const partA = partOf(a, slope, spreadA / spread, leverage);
  const partB = partOf(b, slope, spreadB / spread, leverage);
  const standardError = Math.sqrt(partA.variance + partB.variance);
  if (standardError === 0) return { difference, ...noTest(NO_RESIDUAL), standardError };
  const df = sumDegreesOfFreedom(partA, partB);
  return { difference, ...estimateTest(difference, standardError, df, confidence) };
}

/** What one group adds to the variance of the difference, holding `share` of all the spread before. */
function partOf(
  group: BeforeAfter,
  slope: number,
  share: number,
  leverage: number,
): EstimatedVariance {
  const n = group.before.length;
  const df = n - 1 - share;
  const residual = sumOfSquaredDeviations(residuals(group, slope), group.after);
  return { variance: (residual / df) * (1 / n + leverage * share), df };
}

function residuals({ before, after }: BeforeAfter, slope: number): number[] {
  return zip(deviations(before), deviations(after)).map(([x, y]) => y - slope * x);
}

function none(reason: string): AdjustedDifference {
  return { difference: { absent: reason }, ...noTest(reason) };
}
