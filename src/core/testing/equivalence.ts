import { expectPositive } from "../checks";
import { BadInput } from "../problem";
import { above, below } from "../statistics/compare";
import { criticalValue, requireProbability, upperP } from "../statistics/distributions";

/** What may be said of a difference and a margin. */
export type EquivalenceReading =
  "the same within the margin" | "different by more than the margin" | "not shown to be the same";

/** What came of the two one-sided tests. */
export interface Equivalence {
  /** Against the difference being below −margin or lower. */
  readonly pLowSide: number;
  /** Against the difference being margin or higher. */
  readonly pHighSide: number;
  /** The larger of the two: both must be ruled out. */
  readonly p: number;
  /** The 1 − 2 alpha interval, which lies inside the margin exactly where p is below alpha. */
  readonly low: number;
  readonly high: number;
  readonly reading: EquivalenceReading;
}

/**
 * Is a difference small enough not to matter? Two one-sided tests: the groups count as the same only where
 * a difference of the margin or more is ruled out on both sides.
 *
 * Source: Schuirmann 1987, J Pharmacokinet Biopharm 15:657-680.
 *
 * @param difference - The difference, in any unit.
 * @param standardError - Its standard error, above 0.
 * @param df - Degrees of freedom, above 0; fractions are allowed.
 * @param margin - The smallest difference that would matter, above 0.
 * @param alpha - The chance of a false alarm, above 0 and below 1; 0.05 is usual.
 * @returns The two p values, the interval and the reading.
 * @throws BadInput where a value is out of its range.
 */
export function equivalence(
  difference: number,
  standardError: number,
  df: number,
  margin: number,
  alpha: number,
): Equivalence {
  expectPositive("standardError", standardError);
  expectPositive("margin", margin);
  requireProbability("alpha", alpha);
  if (alpha >= 0.5) throw new BadInput(`alpha is ${alpha}; expected below 0.5`);
  const pLowSide = upperP((difference + margin) / standardError, df);
  const pHighSide = upperP((margin - difference) / standardError, df);
  const reach = criticalValue(1 - 2 * alpha, df) * standardError;
  const [low, high] = [difference - reach, difference + reach];
  const p = Math.max(pLowSide, pHighSide);
  return { pLowSide, pHighSide, p, low, high, reading: reading(p, alpha, low, high, margin) };
}

function reading(
  p: number,
  alpha: number,
  low: number,
  high: number,
  margin: number,
): EquivalenceReading {
  if (below(p, alpha)) return "the same within the margin";
  if (above(low, margin) || below(high, -margin)) return "different by more than the margin";
  return "not shown to be the same";
}
