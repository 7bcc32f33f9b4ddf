import { recorded, required } from "../../cells";
import { repsAtLoad } from "../../core/strength/repsAtLoad";
import { lift } from "../answer";
import type { EquationChoice } from "../choices";
import { equationOf } from "../equation";
import * as quantities from "../quantities";

/**
 * How many reps a load allows, from the one-repetition maximum, leaving the reserve you want. Not rounded.
 *
 * @customfunction REPSAT
 * @param load The load on the bar, above 0.
 * @param oneRepMax The 1RM in the same unit, above 0.
 * @param [reserve] Reps to leave in reserve, 0 or more; 0 if omitted.
 * @param [equation] {@phrase equation}
 * @returns Reps, 0 or more; 0 for a load above the 1RM.
 * @errors #N/A for a load lighter than the equation reaches.
 * @example =SPARE.REPSAT(80, 100, 3)
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213, solved for the reps.
 */
export function repsAt(
  load: unknown[][],
  oneRepMax: unknown[][],
  reserve?: unknown[][],
  equation?: EquationChoice[][],
): unknown[][] {
  return lift(
    {
      load: required(load, quantities.load()),
      oneRepMax: required(oneRepMax, quantities.load("oneRepMax")),
      reserve: recorded(reserve, quantities.reserve(), 0),
      equation: equationOf(equation),
    },
    ({ load, oneRepMax, reserve, equation }) => repsAtLoad(load, oneRepMax, reserve, equation),
  );
}
