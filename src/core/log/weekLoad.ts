import { NoAnswer } from "../problem";
import { mean, standardDeviation, sum } from "../statistics/moments";

/**
 * Monotony: the mean of a week's daily loads over their standard deviation. Hard days and easy days make it
 * low, the same every day makes it high. Rest days belong in it, as zeros.
 *
 * Source: Foster 1998, Med Sci Sports Exerc 30:1164-1168. Which standard deviation is not settled there; this is
 * the sample's, over n − 1.
 *
 * @param dailyLoads - A load a day of one week, rest days as 0.
 * @returns The monotony, a plain number.
 * @throws NoAnswer where there are fewer than 2 days, or all are alike.
 */
export function weekMonotony(dailyLoads: readonly number[]): number {
  if (dailyLoads.length < 2) {
    throw new NoAnswer(`monotony needs at least 2 days; found ${dailyLoads.length}`);
  }
  const spread = standardDeviation(dailyLoads);
  if (spread === 0) throw new NoAnswer("every day has the same load, so monotony has no end");
  return mean(dailyLoads) / spread;
}

/**
 * Strain: the week's total load times its monotony.
 *
 * Source: Foster 1998, Med Sci Sports Exerc 30:1164-1168.
 *
 * @param dailyLoads - A load a day of one week, rest days as 0.
 * @returns The strain, in the loads' unit.
 * @throws NoAnswer where there are fewer than 2 days, or all are alike.
 */
export function weekStrain(dailyLoads: readonly number[]): number {
  return sum(dailyLoads) * weekMonotony(dailyLoads);
}
