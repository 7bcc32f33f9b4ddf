import { above } from "../statistics/compare";
import { repsToFailureAt, type Equation } from "./equations";

/**
 * How many reps a load allows when `reserve` are to be left: the t with f(t) = load / 1RM, less the reserve,
 * never below 0. Above the 1RM there is no rep to be had.
 *
 * Source: the equation's, as named beside it.
 *
 * @param load - The load, in kilograms or pounds, above 0.
 * @param oneRepMax - The one-repetition maximum in the load's unit, above 0.
 * @param reserve - Reps in reserve, 0 or more.
 * @param equation - One of `equations`, or a lifter's `ownCurve`.
 * @returns Whole reps, not below 0, that leave the reserve.
 * @throws NoAnswer where the load is lighter than the equation reaches.
 */
export function repsAtLoad(
  load: number,
  oneRepMax: number,
  reserve: number,
  equation: Equation,
): number {
  if (above(load, oneRepMax)) return 0;
  const fraction = Math.min(1, load / oneRepMax);
  return Math.max(0, repsToFailureAt(equation, fraction) - reserve);
}
