import { requireGroupSize } from "./inputs";
import { seFromInterval } from "./seFromInterval";

/**
 * The standard deviation behind the confidence interval of a mean of n people: √n times its width over twice
 * Student's t on n − 1 degrees of freedom (Cochrane Handbook, chapter 6, which allows the normal from 60
 * people on; t is right at every n).
 *
 * @param low - The interval's low end.
 * @param high - Its high end.
 * @param n - How many people, at least 2.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns The SD, in the mean's unit.
 * @throws BadInput where the interval or `n` cannot be.
 */
export function sdFromInterval(low: number, high: number, n: number, confidence = 0.95): number {
  requireGroupSize("n", n);
  return Math.sqrt(n) * seFromInterval(low, high, confidence, n - 1);
}
