import { estimateTest, noTest, type EstimateTest } from "./estimateTest";
import { mean, variance } from "./moments";
import { sumDegreesOfFreedom } from "./satterthwaite";

/** The difference of two means, A − B, and its test. */
export interface WelchTest extends EstimateTest {
  readonly difference: number;
}

/**
 * Do two groups differ? The t test that lets their spreads differ too.
 *
 * Source: Welch 1947, Biometrika 34:28-35.
 *
 * @param a - The values of one group.
 * @param b - Those of the other.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns The difference a − b with its interval and test.
 * @throws NoAnswer where a group is empty.
 */
export function welchTest(
  a: readonly number[],
  b: readonly number[],
  confidence: number,
): WelchTest {
  const difference = mean(a) - mean(b);
  if (a.length < 2 || b.length < 2) {
    return { difference, ...noTest("a group of one has no spread") };
  }
  const partA = variance(a) / a.length;
  const partB = variance(b) / b.length;
  const whole = partA + partB;
  if (whole === 0) {
    return { difference, ...noTest("the values do not vary, so there is nothing to judge by") };
  }
  const df = sumDegreesOfFreedom(
    { variance: partA, df: a.length - 1 },
    { variance: partB, df: b.length - 1 },
  );
  return { difference, ...estimateTest(difference, Math.sqrt(whole), df, confidence) };
}
