import type { Absent } from "../problem";
import { type EstimateTest, estimateTest, noTest } from "./estimateTest";
import { mean, standardDeviation } from "./moments";

/** A mean, its spread, and its t test against 0. */
export interface MeanTest extends EstimateTest {
  readonly n: number;
  readonly mean: number;
  readonly sd: number | Absent;
}

/**
 * Is the mean of these values different from 0? The one-sample t test; given changes, it is the paired t
 * test (Student 1908, Biometrika 6:1-25). A single value has a mean and nothing else.
 *
 * @param values - The values, in any one unit.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns The mean with its interval and test.
 * @throws NoAnswer where there are no values.
 */
export function meanTest(values: readonly number[], confidence: number): MeanTest {
  const n = values.length;
  const estimate = mean(values);
  if (n === 1) {
    const reason = "a single value has no spread";
    return { n, mean: estimate, sd: { absent: reason }, ...noTest(reason) };
  }
  const sd = standardDeviation(values);
  return {
    n,
    mean: estimate,
    sd,
    ...estimateTest(estimate, sd / Math.sqrt(n), n - 1, confidence),
  };
}
