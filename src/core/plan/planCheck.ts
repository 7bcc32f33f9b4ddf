import { expectAtLeast, expectPositive, inRow } from "../checks";
import type { Absent } from "../problem";
import { difference } from "../statistics/compare";
import { fractionAt, type Equation } from "../strength/equations";

/** A set as planned or as done; without a reserve where none was recorded. */
export interface CheckedSet {
  readonly load: number;
  readonly reps: number;
  readonly reserve?: number;
}

/** How a set done differs from the set planned: above zero when more was done. */
export interface PlanCheck {
  /** As a fraction of the planned load. */
  readonly loadOff: number;
  readonly repsOff: number;
  readonly reserveOff: number | Absent;
  /** The 1RM that the set done shows, over the one that the plan assumed, less 1. */
  readonly strengthOff: number | Absent;
}

/**
 * Compares what was done with what was planned. More load or fewer reps in reserve need not mean a stronger
 * lifter: `strengthOff` weighs them all by the equation, so that a plan that has become too easy shows.
 *
 * Source: the equation's, as named beside it.
 *
 * @param planned - The set as it was planned.
 * @param done - The set as it was done; its reserve may be unknown.
 * @param equation - One of `equations`, or a lifter's `ownCurve`.
 * @returns How far load, reps, reserve and strength are off.
 * @throws BadInput where a set cannot be.
 */
export function planCheck(planned: CheckedSet, done: CheckedSet, equation: Equation): PlanCheck {
  inRow("the planned set", () => checkSet(planned));
  inRow("the set done", () => checkSet(done));
  const offs = {
    loadOff: difference(done.load, planned.load) / planned.load,
    repsOff: difference(done.reps, planned.reps),
  };
  if (planned.reserve === undefined || done.reserve === undefined) {
    const whose = planned.reserve === undefined ? "planned" : "recorded";
    const none = { absent: `no reserve was ${whose} for this set` };
    return { ...offs, reserveOff: none, strengthOff: none };
  }
  const assumed = inRow("the planned set", () => maximum(planned, planned.reserve!, equation));
  const shown = inRow("the set done", () => maximum(done, done.reserve!, equation));
  return {
    ...offs,
    reserveOff: difference(done.reserve, planned.reserve),
    strengthOff: difference(shown, assumed) / assumed,
  };
}

function checkSet({ load, reps, reserve }: CheckedSet): void {
  expectPositive("load", load);
  expectAtLeast("reps", reps, 1);
  if (reserve !== undefined) expectAtLeast("reserve", reserve, 0);
}

const maximum = ({ load, reps }: CheckedSet, reserve: number, equation: Equation) =>
  load / fractionAt(equation, reps + reserve);
