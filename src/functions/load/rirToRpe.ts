import { required } from "../../cells";
import { LOWEST_RPE, reserveToRpe, rpeToReserve } from "../../core/load/effortScale";
import { lift } from "../answer";
import * as quantities from "../quantities";

/**
 * Rating of perceived exertion (RPE) from reps in reserve, on the repetitions-in-reserve scale: 10 − reserve.
 *
 * @customfunction RIRTORPE
 * @param reserve Reps in reserve, 0 to 5. For a range write D2:D50&"" so that a blank is not read as 0.
 * @returns An RPE, 5 to 10.
 * @errors #VALUE! for a reserve outside 0 to 5.
 * @example =SPARE.RIRTORPE(2)
 * @source Zourdos et al. 2016, J Strength Cond Res 30:267-275.
 */
export function rirToRpe(reserve: unknown[][]): unknown[][] {
  const scale = {
    ...quantities.reserve(),
    expected: "reps in reserve, 0 to 5",
    accepts: (value: number) => value >= 0 && value <= rpeToReserve(LOWEST_RPE),
  };
  return lift({ reserve: required(reserve, scale) }, ({ reserve }) => reserveToRpe(reserve));
}
