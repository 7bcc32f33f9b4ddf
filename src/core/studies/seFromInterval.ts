import { criticalValue } from "../statistics/distributions";
import { requireInterval, requirePositive } from "./inputs";

/**
 * The standard error behind a confidence interval: its width over twice the quantile it was built with, the
 * normal's, or Student's t where the degrees of freedom are given (Cochrane Handbook, chapter 6).
 *
 * @param low - The interval's low end.
 * @param high - Its high end.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @param df - Those of the interval, where it was Student's t.
 * @returns The standard error, in the effect's unit.
 * @throws BadInput where the interval or `df` cannot be.
 */
export function seFromInterval(low: number, high: number, confidence = 0.95, df?: number): number {
  requireInterval(low, high);
  if (df !== undefined) requirePositive("df", df);
  return (high - low) / (2 * criticalValue(confidence, df));
}
