import type { Absent } from "../problem";
import { criticalValue, requireProbability, twoSidedP } from "./inference";

/** An estimate's interval and its t test against 0. */
export interface EstimateTest {
  readonly standardError: number | Absent;
  readonly low: number | Absent;
  readonly high: number | Absent;
  readonly t: number | Absent;
  readonly df: number | Absent;
  readonly p: number | Absent;
}

/**
 * Interval and two-sided test of an estimate from its standard error, by Student's t on `df` degrees of
 * freedom. Values that do not vary at all leave nothing to judge the estimate by: then there is neither.
 */
export function estimateTest(
  estimate: number,
  standardError: number,
  df: number,
  confidence: number,
): EstimateTest {
  requireProbability("confidence", confidence);
  if (standardError === 0) {
    const none = { absent: "the values do not vary, so there is nothing to judge by" };
    return { standardError, low: none, high: none, t: none, df, p: none };
  }
  const t = estimate / standardError;
  const reach = criticalValue(confidence, df) * standardError;
  return {
    standardError,
    low: estimate - reach,
    high: estimate + reach,
    t,
    df,
    p: twoSidedP(t, df),
  };
}

/** The test that cannot be made, and why. */
export function noTest(absent: string): EstimateTest {
  const none = { absent };
  return { standardError: none, low: none, high: none, t: none, df: none, p: none };
}
