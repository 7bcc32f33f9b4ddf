import { single } from "../../cells";
import * as week from "../../core/log/weekLoad";
import { ofWeek } from "./ofWeek";

/**
 * Strain of a week: its total load times its monotony. High when much is done with little change from day to day.
 *
 * @customfunction WEEKSTRAIN
 * @param loads {@phrase loadOfDay}
 * @returns One number, in the unit of the loads.
 * @errors #N/A for fewer than 2 days, or when every day has the same load.
 * @example =SPARE.WEEKSTRAIN(B2:B8)
 * @source Foster 1998, Med Sci Sports Exerc 30:1164-1168; the standard deviation over n − 1.
 */
export function weekStrain(loads: unknown[][]): unknown[][] {
  return single(computeWeekStrain({ loads }) ?? "");
}

/** The typed half of WEEKSTRAIN; nothing while the week is not filled in. */
export const computeWeekStrain = ofWeek(week.weekStrain);
