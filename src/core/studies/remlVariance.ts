import { NoAnswer } from "../problem";
import { findRoot } from "../statistics/findRoot";
import { sum } from "../statistics/moments";
import { restrictedLogLikelihood, restrictedSlope } from "./restrictedLikelihood";
import type { StudyModel } from "./weightedFit";

/** Steps of the scan for each tenfold rise of the total variance: one step is 3.7%. */
const STEPS_A_TENFOLD = 64;

/**
 * The between-study variance τ² by restricted maximum likelihood: the τ² of 0 or more under which what the
 * studies leave unexplained is likeliest.
 *
 * The likelihood can have several peaks where studies differ much in precision, and its highest can be at
 * 0, where no slope vanishes. So the whole of the range that can hold a peak is scanned for places where
 * the slope turns from rising to falling, each is closed in on to the last digits, and the highest of them
 * all, 0 among them, is taken. (An iteration from a starting value, the usual way, may end on a lower peak,
 * below zero, or nowhere.)
 */
export function remlVariance(model: StudyModel, variances: readonly number[]): number {
  const highest = farthestPeak(model, variances);
  if (highest === 0) return 0;

  // Past the farthest peak the slope is falling for certain, whatever rounding says at the peak itself.
  const end = 1.5 * highest;
  const smallest = least(variances);
  // Even steps of ln(τ² + smallest variance): the scale on which the likelihood changes at an even pace.
  const reach = Math.log1p(end / smallest);
  const steps = Math.ceil(8 + (STEPS_A_TENFOLD * reach) / Math.LN10);
  const slope = (between: number) => restrictedSlope(model, variances, between);

  const peaks: number[] = [];
  let left = 0;
  let leftSlope = slope(0);
  if (leftSlope <= 0) peaks.push(0);
  for (let step = 1; step <= steps; step++) {
    const right = smallest * Math.expm1((reach * step) / steps);
    const rightSlope = slope(right);
    if (leftSlope > 0 && rightSlope <= 0) {
      const [from, width] = [left, right - left];
      peaks.push(from + width * findRoot((share) => slope(from + share * width), 0, 1));
    }
    left = right;
    leftSlope = rightSlope;
  }

  if (peaks.length === 0) {
    // Within rounding of 0 the slope may show no turn; any farther out it has one.
    if (highest < 1e-10 * smallest) return highest;
    throw new NoAnswer("the search for the between-study variance found no peak");
  }
  const height = (between: number) => restrictedLogLikelihood(model, variances, between);
  return peaks.reduce((best, peak) => (height(peak) > height(best) ? peak : best));
}

/**
 * A τ² above which the likelihood only falls. With x = τ² + the smallest variance, d the difference of the
 * largest and smallest variance, R the residual sum of squares of the unweighted fit and f its degrees of
 * freedom: y'PPy ≤ R / x² and tr P ≥ f / (x + d), so the slope is below zero once f x² > R (x + d). Where
 * all studies are equally precise (d = 0) this is the answer itself: R / f less their variance.
 */
function farthestPeak(model: StudyModel, variances: readonly number[]): number {
  const unweighted = model.fit(variances.map(() => 1));
  const squares = sum(variances.map((_, i) => unweighted.residual(i) ** 2));
  const meanSquare = squares / (model.studies - model.parameters);
  const smallest = least(variances);
  const difference = most(variances) - smallest;
  const x = (meanSquare + Math.sqrt(meanSquare ** 2 + 4 * meanSquare * difference)) / 2;
  return Math.max(0, x - smallest);
}

const least = (values: readonly number[]) => values.reduce((a, b) => Math.min(a, b));
const most = (values: readonly number[]) => values.reduce((a, b) => Math.max(a, b));
