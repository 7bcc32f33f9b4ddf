import { type Absent, BadInput } from "../problem";
import { difference } from "../statistics/compare";
import { criticalValue, twoSidedP, upperP } from "../statistics/distributions";
import { type ChangeReading, changeReading } from "./changeReading";
import { errorOfChange } from "./minimalDetectableChange";

/** Two scores of one athlete, and what is known about the test. */
export interface RetestedScore {
  readonly before: number;
  readonly after: number;
  /** The typical error of the test, in its own units. */
  readonly typicalError: number;
  /** The smallest change that matters, 0 or more. */
  readonly smallest: number;
  readonly confidence: number;
  /** The degrees of freedom of the typical error; normal where not given. */
  readonly df?: number | undefined;
}

/** What came of one athlete's two tests. */
export interface ChangeScore {
  readonly change: number;
  /** The change as a fraction of the score before. */
  readonly percent: number | Absent;
  /** The interval of the true change. */
  readonly low: number;
  readonly high: number;
  /** The change in units of what test error alone gives, √2 × typical error. */
  readonly ratio: number;
  /** How likely a change of this size is from test error alone, two-sided. */
  readonly p: number;
  /** The chance that the true change is an increase of more than the smallest that matters. */
  readonly chance: number;
  readonly reading: ChangeReading;
}

/**
 * Did this athlete change, or did the test wobble? Compares the change with what test error alone does. The
 * interval of the true change decides what is said: how much of it lies beyond the smallest that matters.
 *
 * Source: Weir 2005, J Strength Cond Res 19:231-240; Hopkins 2000, Sports Med 30:1-15.
 *
 * @param score - The two scores and the test's error.
 * @returns The change with its interval and reading.
 * @throws BadInput where `smallest` is below 0, or the error not above 0.
 */
export function changeScore(score: RetestedScore): ChangeScore {
  const { before, after, typicalError, smallest, confidence, df } = score;
  if (smallest < 0) {
    throw new BadInput(`smallest is ${smallest}; expected 0 or more`);
  }
  const noise = errorOfChange(typicalError);
  const reach = criticalValue(confidence, df) * noise;
  const change = difference(after, before);
  const ratio = change / noise;
  const p = twoSidedP(ratio, df);
  const interval = { low: change - reach, high: change + reach };
  return {
    change,
    percent: percentOf(change, before),
    ...interval,
    ratio,
    p,
    chance: upperP((smallest - change) / noise, df),
    reading: changeReading(interval, smallest),
  };
}

function percentOf(change: number, before: number): number | Absent {
  const percent = change / before;
  if (before > 0 && Number.isFinite(percent)) return percent;
  return { absent: "a percent change needs a score above 0" };
}
