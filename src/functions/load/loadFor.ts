import { recorded, required, setting } from "../../cells";
import { targetLoad } from "../../core/load/targetLoad";
import { lift } from "../answer";
import type { EquationChoice } from "../choices";
import { equationOf } from "../equation";
import * as quantities from "../quantities";

/**
 * The load for a target: so many reps with so many left in reserve, from the one-repetition maximum, rounded to what the bar can carry (nearest, a tie down), never above that maximum.
 *
 * @customfunction LOADFOR
 * @param oneRepMax The 1RM or e1RM, above 0, in kilograms or pounds.
 * @param reps Target reps, above 0.
 * @param [reserve] Target reps in reserve, 0 or more; 0 if omitted, no load yet if blank.
 * @param [increment] {@phrase increment}
 * @param [equation] {@phrase equation}
 * @returns The load, in the unit of the 1RM.
 * @errors #VALUE! when reps plus reserve is below 1 or past the equation's reach.
 * @example =SPARE.LOADFOR(140, 5, 2, 2.5)
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213.
 */
export function loadFor(
  oneRepMax: unknown[][],
  reps: unknown[][],
  reserve?: unknown[][],
  increment?: unknown[][],
  equation?: EquationChoice[][],
): unknown[][] {
  return lift(
    {
      oneRepMax: required(oneRepMax, quantities.load("oneRepMax")),
      reps: required(reps, quantities.reps()),
      reserve: recorded(reserve, quantities.reserve(), 0),
      increment: setting(increment, quantities.increment(), 0),
      equation: equationOf(equation),
    },
    ({ oneRepMax, reps, reserve, increment, equation }) =>
      targetLoad(oneRepMax, reps + reserve, increment, equation),
  );
}
