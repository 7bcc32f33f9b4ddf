import type { Absent } from "../problem";
import { type EstimateTest, estimateTest, noTest } from "../statistics/estimateTest";
import {
  deviations,
  mean,
  sumOfProducts,
  sumOfSquaredDeviations,
  sumOfSquares,
} from "../statistics/moments";

/** One group's scores, an athlete a row in both. */
export interface BeforeAfter {
  readonly before: readonly number[];
  readonly after: readonly number[];
}

/** The adjusted difference and its test. */
export interface AdjustedDifference extends EstimateTest {
  readonly difference: number | Absent;
}

/**
 * How much higher A ended than B *from the same starting score*: the score after, by group and score before
 * (analysis of covariance with one slope for both groups). It is fairer than comparing plain changes,
 * because who starts low tends to gain more, and it is more precise.
 *
 * Source: Vickers and Altman 2001, BMJ 323:1123-1124.
 */
export function adjustedDifference(
  a: BeforeAfter,
  b: BeforeAfter,
  confidence: number,
): AdjustedDifference {
  const [nA, nB] = [a.before.length, b.before.length];
  const df = nA + nB - 3;
  if (df < 1) return none("an adjusted difference needs at least 4 athletes");
  const spread = sumOfSquares(a.before) + sumOfSquares(b.before);
  if (spread === 0) return none("the scores before do not vary, so there is nothing to adjust by");

  const slope = (sumOfProducts(a.before, a.after) + sumOfProducts(b.before, b.after)) / spread;
  const gapBefore = mean(a.before) - mean(b.before);
  const difference = mean(a.after) - mean(b.after) - slope * gapBefore;
  const residual = sumOfSquaredDeviations(
    [...residuals(a, slope), ...residuals(b, slope)],
    [...a.after, ...b.after],
  );
  const weight = 1 / nA + 1 / nB + gapBefore ** 2 / spread;
  const standardError = Math.sqrt((residual / df) * weight);
  return { difference, ...estimateTest(difference, standardError, df, confidence) };
}

function residuals({ before, after }: BeforeAfter, slope: number): number[] {
  const x = deviations(before);
  return deviations(after).map((y, i) => y - slope * x[i]!);
}

function none(reason: string): AdjustedDifference {
  return { difference: { absent: reason }, ...noTest(reason) };
}
