import { trendSummary, type TrendSummary } from "./strengthTrend";
import { LEAST_DAYS, usedSets, type LoggedSet, type TrendOptions } from "./trend/usedSets";

/** Where one lifter stands; of a log too short for a trend, only how long it is. */
export type SquadTrendRow = Pick<TrendSummary, "days" | "sets"> & Partial<TrendSummary>;

/**
 * Who got stronger: the summary of `strengthTrend` for each log of a squad, a lifter and lift each.
 *
 * Source: as for `strengthTrend`.
 *
 * @param logs - A log a lifter, or a lifter and lift.
 * @param options - What can be said besides; see its type.
 * @returns A row a log; where it has too few days only how many there are.
 * @throws BadInput where a set cannot be.
 */
export function squadTrend(
  logs: readonly (readonly LoggedSet[])[],
  options: TrendOptions,
): SquadTrendRow[] {
  return logs.map((log) => {
    const used = usedSets(log, options);
    return used.days.length < LEAST_DAYS
      ? { days: used.days.length, sets: used.sets.length }
      : trendSummary(used, options);
  });
}
