import { recorded, required } from "../../cells";
import { fractionAt } from "../../core/strength/equations";
import { lift } from "../answer";
import type { EquationChoice } from "../choices";
import { equationOf } from "../equation";
import * as quantities from "../quantities";

/**
 * The fraction of the one-repetition maximum that fits a set: 0.85 means 85%. Format the cell as a percentage.
 *
 * @customfunction PERCENT1RM
 * @param reps The reps of the set, above 0.
 * @param [reserve] {@phrase reserve}
 * @param [equation] {@phrase equation}
 * @returns A fraction of 1RM between 0 and 1; 1 at one rep to failure.
 * @errors #VALUE! when reps plus reserve is below 1 or past the equation's reach.
 * @example =SPARE.PERCENT1RM(5, 2)
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213.
 */
export function percent1rm(
  reps: unknown[][],
  reserve?: unknown[][],
  equation?: EquationChoice[][],
): unknown[][] {
  return lift(
    {
      reps: required(reps, quantities.reps()),
      reserve: recorded(reserve, quantities.reserve(), 0),
      equation: equationOf(equation),
    },
    ({ reps, reserve, equation }) => fractionAt(equation, reps + reserve),
  );
}
