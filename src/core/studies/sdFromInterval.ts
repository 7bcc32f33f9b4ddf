import { requireGroupSize } from "./inputs";
import { seFromInterval } from "./seFromInterval";

/**
 * The standard deviation behind the confidence interval of a mean of n people: √n times its width over twice
 * Student's t on n − 1 degrees of freedom (Cochrane Handbook, chapter 6, which allows the normal from 60
 * people on; t is right at every n).
 */
export function sdFromInterval(low: number, high: number, n: number, confidence = 0.95): number {
  requireGroupSize("n", n);
  return Math.sqrt(n) * seFromInterval(low, high, confidence, n - 1);
}
