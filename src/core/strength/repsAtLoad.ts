import { above } from "../statistics/compare";
import { repsToFailureAt, type Equation } from "./equations";

/**
 * How many reps a load allows when `reserve` are to be left: the t with f(t) = load / 1RM, less the reserve,
 * never below 0. Above the 1RM there is no rep to be had.
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
