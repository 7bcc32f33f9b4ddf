import { e1rm as estimate } from "../../core/strength/oneRepMax";
import { lift } from "../answer";
import type { EquationChoice } from "../choices";
import { equationOf } from "../equation";
import { setInputs } from "./setInputs";

/**
 * Estimated one-repetition maximum (e1RM) from an ordinary set: its load, its reps and the reps left in reserve. An estimate is not a clearance to lift.
 *
 * @customfunction E1RM
 * @param load {@phrase loadDone}
 * @param reps {@phrase repsDone}
 * @param [reserve] Reps in reserve, 0 or more; 0 if omitted. A blank cell means not recorded: write D2:D50&"" so that a blank is not read as 0.
 * @param [equation] {@phrase equation}
 * @returns The e1RM in the unit of the load; the shape of the ranges given, "" where a row is not filled in.
 * @errors #VALUE! when reps plus reserve is below 1 or past the equation's reach (15 for brzycki and lander, 30 for the others).
 * @example =SPARE.E1RM(100, 5, 2)
 * @example =SPARE.E1RM(B2:B20, C2:C20, D2:D20&"")
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213.
 */
export function e1rm(
  load: unknown[][],
  reps: unknown[][],
  reserve?: unknown[][],
  equation?: EquationChoice[][],
): unknown[][] {
  return lift(
    { ...setInputs(load, reps, reserve), equation: equationOf(equation) },
    ({ load, reps, reserve, equation }) => estimate(load, reps + reserve, equation),
  );
}
