import { required } from "../../cells";
import { LOWEST_RPE, reserveToRpe, rpeToReserve } from "../../core/load/effortScale";
import { lift } from "../answer";
import * as quantities from "../quantities";

/**
 * Reps in reserve from a rating of perceived exertion (RPE) on the repetitions-in-reserve scale: 10 − RPE.
 *
 * @customfunction RPETORIR
 * @param rpe The RPE, 5 to 10; below 5 the scale names no number of reps.
 * @returns Reps in reserve, 0 to 5.
 * @errors #VALUE! for an RPE outside 5 to 10.
 * @example =SPARE.RPETORIR(8.5)
 * @source Zourdos et al. 2016, J Strength Cond Res 30:267-275; a line through the printed scale, which has "none left, perhaps more load" at 9.5.
 */
export function rpeToRir(rpe: unknown[][]): unknown[][] {
  const scale = {
    ...quantities.above0("rpe", "an RPE of 5 to 10"),
    accepts: (value: number) => value >= LOWEST_RPE && value <= reserveToRpe(0),
  };
  return lift({ rpe: required(rpe, scale) }, ({ rpe }) => rpeToReserve(rpe));
}
