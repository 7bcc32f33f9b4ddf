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
 */
export function reserveCheck(errors: readonly number[], confidence: number): ReserveCheck {
  const { n, mean: bias, sd, low, high, p } = meanTest(errors, confidence);
  return { n, bias, sd, meanMiss: meanMiss(errors), low, high, ...agreement(bias, sd), p };
}

/** The mean absolute error. */
export const meanMiss = (errors: readonly number[]): number => mean(errors.map(Math.abs));

/** Standard deviations that 95% of a normal distribution lie within, as Bland and Altman print it. */
const REACH = 1.96;

/** The 95% limits of agreement. */
export function agreement(
  bias: number,
  sd: number | Absent,
): Pick<ReserveCheck, "agreeLow" | "agreeHigh"> {
  if (typeof sd === "object") return { agreeLow: sd, agreeHigh: sd };
  return { agreeLow: bias - REACH * sd, agreeHigh: bias + REACH * sd };
}
