import type { Absent } from "../problem";
import { criticalValue, twoSidedP } from "../statistics/distributions";

/** An estimate's interval, and its test against no effect. */
export interface EffectInterval {
  readonly low: number;
  readonly high: number;
  readonly statistic: number | Absent;
  readonly p: number | Absent;
}

/** Interval and test from an estimate's standard error: Student's t where df are given, else normal. */
export function effectInterval(
  estimate: number,
  standardError: number,
  confidence: number,
  df?: number,
): EffectInterval {
  const reach = criticalValue(confidence, df) * standardError;
  const [low, high] = [estimate - reach, estimate + reach];
  if (standardError === 0) {
    const absent = "the studies agree exactly, so there is no spread to test against";
    return { low, high, statistic: { absent }, p: { absent } };
  }
  const statistic = estimate / standardError;
  return { low, high, statistic, p: twoSidedP(statistic, df) };
}
