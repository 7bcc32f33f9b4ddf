import { BadInput } from "../problem";
import { above } from "../statistics/compare";
import { e1rm } from "../strength/oneRepMax";
import { fractionAt, type Equation } from "../strength/equations";
import { roundToMultiple } from "./round";

/**
 * The load for a target: 1RM × f(t), rounded to what the bar can carry.
 *
 * Source: the equation's, as named beside it.
 *
 * @param oneRepMax - The one-repetition maximum in the load's unit, above 0.
 * @param repsToFailure - Reps done plus reps in reserve, from 1 to the equation's cap.
 * @param increment - The step that the bar can be loaded in, in the load's unit; 0 for none.
 * @param equation - One of `equations`, or a lifter's `ownCurve`.
 * @returns The load in the maximum's unit.
 * @throws BadInput where `repsToFailure` is outside the equation, or `increment` below 0.
 */
export function targetLoad(
  oneRepMax: number,
  repsToFailure: number,
  increment: number,
  equation: Equation,
): number {
  const load = oneRepMax * fractionAt(equation, repsToFailure);
  return roundedLoad(load, oneRepMax, increment);
}

/**
 * A planned load rounded to the nearest multiple, a tie down; but never to one above the 1RM, which nobody is meant to
 * lift: 141.3 in steps of 2.5 is then 140, not 142.5.
 *
 * Source: common practice, no source.
 *
 * @param load - The load, in kilograms or pounds, above 0.
 * @param oneRepMax - The one-repetition maximum in the load's unit, above 0.
 * @param increment - The step that the bar can be loaded in, in the load's unit; 0 for none.
 * @returns The load in the same unit.
 * @throws BadInput where `increment` is below 0.
 */
export function roundedLoad(load: number, oneRepMax: number, increment: number): number {
  const nearest = roundToMultiple(load, increment, "nearest-tie-down");
  return above(nearest, oneRepMax) ? roundToMultiple(load, increment, "down") : nearest;
}

/** A call further from failure than this is too unsure to set a load by. */
export const MOST_CALLED_RESERVE = 5;

/**
 * The load that brings the next set to its target, by way of the e1RM of the set just done. How many reps are left is
 * judged well near failure and badly far from it, so a call of more than 5 sets no load.
 *
 * Source: the equation's; the bound on calls is common practice.
 *
 * @param done - The set just done: its load, reps and called reserve.
 * @param targetRepsToFailure - Reps plus reserve of the next set.
 * @param increment - The step that the bar can be loaded in, in the load's unit; 0 for none.
 * @param equation - One of `equations`, or a lifter's `ownCurve`.
 * @returns The load in the same unit.
 * @throws BadInput where the reserve was called above 5, or reps to failure are outside the equation.
 */
export function nextLoad(
  done: { load: number; reps: number; reserve: number },
  targetRepsToFailure: number,
  increment: number,
  equation: Equation,
): number {
  if (above(done.reserve, MOST_CALLED_RESERVE)) {
    throw new BadInput(
      `reserve is ${done.reserve}; expected at most ${MOST_CALLED_RESERVE}, as a call further from ` +
        "failure is too rough to set a load by: take the set nearer to failure first",
    );
  }
  const estimate = e1rm(done.load, done.reps + done.reserve, equation);
  return targetLoad(estimate, targetRepsToFailure, increment, equation);
}
