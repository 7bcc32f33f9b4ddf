import { optional, required } from "../../cells";
import { planCheck as check } from "../../core/plan/planCheck";
import { liftRow } from "../answer";
import type { EquationChoice } from "../choices";
import { equationOf } from "../equation";
import * as quantities from "../quantities";

/**
 * @customenum {string}
 */
export enum PlanCheckPart {
  /** Load done over load planned, less 1. */
  loadOff = "load off",
  /** Reps done less reps planned. */
  repsOff = "reps off",
  /** Reserve left less reserve planned. */
  reserveOff = "reserve off",
  /** The e1RM of the set done over the one the plan assumed, less 1. */
  strengthOff = "strength off",
}

/**
 * What was done against what was planned. More load is not more strength if the reserve went with it: strength off weighs load, reps and reserve together.
 *
 * @customfunction PLANCHECK
 * @param plannedLoad The planned load, above 0.
 * @param plannedReps The planned reps, above 0.
 * @param plannedReserve The planned reps in reserve, 0 or more.
 * @param load The load done, above 0, in the same unit.
 * @param reps {@phrase repsDone}
 * @param reserve The reps in reserve called, 0 or more; blank for not recorded. For a range write D2:D50&"".
 * @param [equation] {@phrase equation}
 * @param [part] {@phrase partOfRow strength off}
 * @returns A row: load off (a fraction), reps off, reserve off, strength off (a fraction). Without a reserve the last two are "".
 * @errors #VALUE! when reps plus reserve of either set is below 1 or past the equation's reach.
 * @example =SPARE.PLANCHECK(100, 5, 2, 102.5, 5, 1)
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213; the comparison by arithmetic.
 */
export function planCheck(
  plannedLoad: unknown[][],
  plannedReps: unknown[][],
  plannedReserve: unknown[][],
  load: unknown[][],
  reps: unknown[][],
  reserve: unknown[][],
  equation?: EquationChoice[][],
  part?: PlanCheckPart[][],
): unknown[][] {
  return liftRow(
    {
      plannedLoad: required(plannedLoad, quantities.load("plannedLoad")),
      plannedReps: required(plannedReps, quantities.reps("plannedReps")),
      plannedReserve: optional(plannedReserve, quantities.reserve("plannedReserve")),
      load: required(load, quantities.load()),
      reps: required(reps, quantities.reps()),
      reserve: optional(reserve, quantities.reserve()),
      equation: equationOf(equation),
    },
    PlanCheckPart,
    part,
    ({ plannedLoad, plannedReps, plannedReserve, load, reps, reserve, equation }) =>
      check(
        { load: plannedLoad, reps: plannedReps, reserve: plannedReserve },
        { load, reps, reserve },
        equation,
      ),
  );
}
