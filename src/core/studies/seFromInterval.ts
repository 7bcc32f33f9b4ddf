import { criticalValue } from "../statistics/distributions";
import { requireInterval, requirePositive } from "./inputs";

/**
 * The standard error behind a confidence interval: its width over twice the quantile it was built with, the
 * normal's, or Student's t where the degrees of freedom are given (Cochrane Handbook, chapter 6).
 */
export function seFromInterval(low: number, high: number, confidence = 0.95, df?: number): number {
  requireInterval(low, high);
  if (df !== undefined) requirePositive("df", df);
  return (high - low) / (2 * criticalValue(confidence, df));
}
