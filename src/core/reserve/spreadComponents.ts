import { NoAnswer } from "../problem";
import { mean, sum, sumOfSquaredDeviations } from "../statistics/moments";

/** The variance of a single value, taken apart. */
export interface SpreadComponents {
  /** Of one lifter's values about their own mean. */
  readonly within: number;
  /** Of the lifters' true means about each other. */
  readonly between: number;
}

/**
 * Variance within and between lifters who have several values each, not necessarily equally many, from a one-way
 * analysis of variance. The plain variance of all values would take a lifter who called ten sets for ten lifters.
 *
 * Source: Bland and Altman 2007, J Biopharm Stat 17:571-582.
 *
 * @param byLifter - The values of each lifter; at least 2 lifters, and one of them with 2 values or more.
 * @returns The two variances, and what they are of.
 * @throws NoAnswer where there are fewer than 2 lifters, or one value each.
 */
export function spreadComponents(byLifter: readonly (readonly number[])[]): SpreadComponents {
  const lifters = byLifter.length;
  const values = byLifter.flat();
  if (lifters < 2 || values.length === lifters) {
    throw new NoAnswer("components need at least 2 lifters, and 2 values from one of them");
  }
  const grandMean = mean(values);
  const off = byLifter.flatMap((own) => {
    const ownMean = mean(own);
    return own.map((value) => ({ own: value - ownMean, lifter: ownMean - grandMean }));
  });
  const offOwnMean = off.map(({ own }) => own);
  const offGrandMean = off.map(({ lifter }) => lifter);

  const within = sumOfSquaredDeviations(offOwnMean, values) / (values.length - lifters);
  const meanSquareBetween = sumOfSquaredDeviations(offGrandMean, values) / (lifters - 1);
  const squaredCounts = sum(byLifter.map((own) => own.length ** 2));
  const perLifter = (values.length - squaredCounts / values.length) / (lifters - 1);
  return { within, between: Math.max(0, (meanSquareBetween - within) / perLifter) };
}
