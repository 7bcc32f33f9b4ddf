import { e1rm } from "../strength/oneRepMax";
import { fractionAt, type Equation } from "../strength/equations";
import { roundToMultiple } from "./round";

/** The load for a target: 1RM × f(t), rounded to what the bar can carry (nearest, a tie down). */
export function targetLoad(
  oneRepMax: number,
  repsToFailure: number,
  increment: number,
  equation: Equation,
): number {
  const load = oneRepMax * fractionAt(equation, repsToFailure);
  return roundToMultiple(load, increment, "nearest-tie-down");
}

/** The load that brings the next set to its target, by way of the e1RM of the set just done. */
export function nextLoad(
  done: { load: number; repsToFailure: number },
  targetRepsToFailure: number,
  increment: number,
  equation: Equation,
): number {
  const estimate = e1rm(done.load, done.repsToFailure, equation);
  return targetLoad(estimate, targetRepsToFailure, increment, equation);
}
