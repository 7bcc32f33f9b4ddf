import { required } from "../../cells";
import { sessionLoad as loadOfSession } from "../../core/log/sessionLoad";
import { lift } from "../answer";
import * as quantities from "../quantities";

/**
 * Session load, also called session RPE: how hard the whole session felt, times its minutes.
 *
 * @customfunction SESSIONLOAD
 * @param rpe How hard the whole session felt, above 0 and up to 10.
 * @param minutes How long the session took, in minutes, above 0.
 * @returns The session load, in arbitrary units; the shape of the ranges given, "" where a row is not filled in.
 * @errors #VALUE! for an RPE above 10.
 * @example =SPARE.SESSIONLOAD(7, 60)
 * @example =SPARE.SESSIONLOAD(B2:B40, C2:C40)
 * @source Foster et al. 2001, J Strength Cond Res 15:109-115.
 */
export function sessionLoad(rpe: unknown[][], minutes: unknown[][]): unknown[][] {
  const scale = {
    ...quantities.above0("rpe", "an RPE above 0, up to 10"),
    accepts: (value: number) => value > 0 && value <= 10,
  };
  return lift(
    {
      rpe: required(rpe, scale),
      minutes: required(minutes, quantities.above0("minutes", "minutes above 0")),
    },
    ({ rpe, minutes }) => loadOfSession(rpe, minutes),
  );
}
