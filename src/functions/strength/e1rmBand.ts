import { setting } from "../../cells";
import { e1rmBand as band } from "../../core/strength/oneRepMax";
import { liftRow } from "../answer";
import type { EquationChoice } from "../choices";
import { equationOf } from "../equation";
import * as quantities from "../quantities";
import { setInputs } from "./setInputs";

/**
 * @customenum {string}
 */
export enum E1rmBandPart {
  /** The e1RM if fewer reps were left than called. */
  low = "low",
  /** The e1RM as called. */
  estimate = "estimate",
  /** The e1RM if more reps were left than called. */
  high = "high",
}

/**
 * The e1RM with the range it could have if the call of the reserve is wrong by a rep or so: low, estimate, high.
 *
 * @customfunction E1RMBAND
 * @param load The load of the set, above 0, in kilograms or pounds.
 * @param reps {@phrase repsDone}
 * @param [reserve] Reps in reserve as called, 0 or more; 0 if omitted, not recorded if blank.
 * @param [reserveError] How many reps the call may be wrong by, either way; 1 if omitted, 0 for none.
 * @param [equation] {@phrase equation}
 * @param [part] "low", "estimate" or "high" for that one value in one cell.
 * @returns A row: low, estimate, high, in the unit of the load. Never fewer reps than were done.
 * @errors #VALUE! when reps plus reserve plus reserveError is past the equation's reach.
 * @example =SPARE.E1RMBAND(100, 5, 2)
 * @example =SPARE.E1RMBAND(100, 6, 1, 3, , "high")
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213; the band by arithmetic.
 */
export function e1rmBand(
  load: unknown[][],
  reps: unknown[][],
  reserve?: unknown[][],
  reserveError?: unknown[][],
  equation?: EquationChoice[][],
  part?: E1rmBandPart[][],
): unknown[][] {
  return liftRow(
    {
      ...setInputs(load, reps, reserve),
      reserveError: setting(
        reserveError,
        quantities.atLeast0("reserveError", "a number of reps, 0 or more"),
        1,
      ),
      equation: equationOf(equation),
    },
    E1rmBandPart,
    part,
    ({ load, reps, reserve, reserveError, equation }) =>
      band(load, reps, reserve, reserveError, equation),
  );
}
