import { BadInput } from "../problem";
import { above } from "../statistics/compare";
import { e1rm } from "../strength/oneRepMax";
import { fractionAt, type Equation } from "../strength/equations";
import { roundToMultiple } from "./round";

/** The load for a target: 1RM × f(t), rounded to what the bar can carry. */
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
