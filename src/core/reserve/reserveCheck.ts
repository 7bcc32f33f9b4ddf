import type { Absent } from "../problem";
import { mean } from "../statistics/moments";
import { meanTest } from "../statistics/meanTest";

/** How well reserves are called, from the errors of the calls. */
export interface ReserveCheck {
  /** Sets, one call each. */
  readonly n: number;
  /** The mean error: above zero, there is more left than is called. */
  readonly bias: number;
  readonly sd: number | Absent;
  /** How far off a call is on average, whichever way. */
  readonly meanMiss: number;
  /** The interval of the bias. */
  readonly low: number | Absent;
  readonly high: number | Absent;
  /** The limits of agreement: between these lie 95% of single calls. */
  readonly agreeLow: number | Absent;
  readonly agreeHigh: number | Absent;
  /** Whether the bias differs from 0. */
  readonly p: number | Absent;
}

/**
 * How well reserves are called, every set standing for itself: bias, limits of agreement, and the t test of the
 * bias against 0.
 *
 * Source: Bland and Altman 1986, Lancet i:307-310.
 *
 * @param errors - What `callError` gives of each call, in reps.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns The check, all in reps.
 * @throws NoAnswer where there are no errors.
 */
export function reserveCheck(errors: readonly number[], confidence: number): ReserveCheck {
  const { n, mean: bias, sd, low, high, p } = meanTest(errors, confidence);
  return { n, bias, sd, meanMiss: meanMiss(errors), low, high, ...agreement(bias, sd), p };
}

/**
 * The mean absolute error.
 *
 * Source: common practice, no source.
 *
 * @param errors - What `callError` gives of each call, in reps.
 * @returns Reps, 0 or more.
 * @throws NoAnswer where there are no errors.
 */
export const meanMiss = (errors: readonly number[]): number => mean(errors.map(Math.abs));

/** Standard deviations that 95% of a normal distribution lie within, as Bland and Altman print it. */
const REACH = 1.96;

/**
 * The 95% limits of agreement.
 *
 * Source: Bland and Altman 1986, Lancet i:307-310.
 *
 * @param bias - The mean error, in reps.
 * @param sd - The SD of a single call, in reps.
 * @returns The two limits, in reps.
 */
export function agreement(
  bias: number,
  sd: number | Absent,
): Pick<ReserveCheck, "agreeLow" | "agreeHigh"> {
  if (typeof sd === "object") return { agreeLow: sd, agreeHigh: sd };
  return { agreeLow: bias - REACH * sd, agreeHigh: bias + REACH * sd };
}
