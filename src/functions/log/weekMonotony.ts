import { single } from "../../cells";
import * as week from "../../core/log/weekLoad";
import { ofWeek } from "./ofWeek";

/**
 * Monotony of a week: the mean of its daily loads over their standard deviation. High when every day is the same.
 *
 * @customfunction WEEKMONOTONY
 * @param loads {@phrase loadOfDay}
 * @returns One number, 0 or more, without a unit.
 * @errors #N/A for fewer than 2 days, or when every day has the same load.
 * @example =SPARE.WEEKMONOTONY(B2:B8)
 * @source Foster 1998, Med Sci Sports Exerc 30:1164-1168; the standard deviation over n − 1.
 */
export function weekMonotony(loads: unknown[][]): unknown[][] {
  return single(computeWeekMonotony({ loads }) ?? "");
}

/** The typed half of WEEKMONOTONY; nothing while the week is not filled in. */
export const computeWeekMonotony = ofWeek(week.weekMonotony);
