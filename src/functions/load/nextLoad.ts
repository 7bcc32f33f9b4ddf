import { required, setting } from "../../cells";
import { nextLoad as loadForNextSet } from "../../core/load/targetLoad";
import { lift } from "../answer";
import type { EquationChoice } from "../choices";
import { equationOf } from "../equation";
import * as quantities from "../quantities";

/**
 * The load that brings the next set to its target, from the set just done: too easy and it goes up, too hard and it goes down.
 *
 * @customfunction NEXTLOAD
 * @param load The load of the set just done, above 0.
 * @param reps The reps just done, above 0.
 * @param reserve The reps in reserve just called, 0 to 5; blank means not recorded.
 * @param targetReps Reps of the next set, above 0.
 * @param targetReserve Reps to leave in reserve in the next set, 0 or more.
 * @param [increment] {@phrase increment}
 * @param [equation] {@phrase equation}
 * @returns The load of the next set, rounded to the smallest step (nearest, a tie down), never above the maximum that the set implies.
 * @errors #VALUE! for a called reserve above 5, too far from failure to set a load by, or when reps plus reserve of either set is below 1 or past the equation's reach.
 * @example =SPARE.NEXTLOAD(100, 8, 2, 5, 1, 2.5)
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213.
 */
export function nextLoad(
  load: unknown[][],
  reps: unknown[][],
  reserve: unknown[][],
  targetReps: unknown[][],
  targetReserve: unknown[][],
  increment?: unknown[][],
  equation?: EquationChoice[][],
): unknown[][] {
  return lift(
    {
      load: required(load, quantities.load()),
      reps: required(reps, quantities.reps()),
      reserve: required(reserve, quantities.reserve()),
      targetReps: required(targetReps, quantities.reps("targetReps")),
      targetReserve: required(targetReserve, quantities.reserve("targetReserve")),
      increment: setting(increment, quantities.increment(), 0),
      equation: equationOf(equation),
    },
    ({ load, reps, reserve, targetReps, targetReserve, increment, equation }) =>
      loadForNextSet({ load, reps, reserve }, targetReps + targetReserve, increment, equation),
  );
}
