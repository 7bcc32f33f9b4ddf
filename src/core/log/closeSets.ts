import { atMost } from "../statistics/compare";
import { reserveIn, setsIn, type GroupOf, type JudgedSets } from "./columns";

/**
 * Whether a set was taken close to failure: at most `within` reps were left. A set whose reserve nobody recorded
 * is not counted as close, for nothing says that it was.
 */
export const isClose = (reserve: number | null, within: number): boolean =>
  reserve !== null && atMost(reserve, within);

/**
 * Sets taken within `within` reps of failure, of each group of rows.
 *
 * Source: common practice, no source.
 *
 * @param log - The log by columns, a place a row; null is not recorded.
 * @param within - Reps from failure at which a set is close still; 4 is common.
 * @param groupOf - Which group a row counts in, from 0 on.
 * @param groups - How many groups there are.
 * @returns A number of sets a group.
 */
export function closeSets(
  log: JudgedSets,
  within: number,
  groupOf: GroupOf,
  groups: number,
): number[] {
  const totals = Array<number>(groups).fill(0);
  log.reps.forEach((reps, row) => {
    if (reps === null || !isClose(reserveIn(log.reserve, row), within)) return;
    totals[groupOf(row)]! += setsIn(log.sets, row);
  });
  return totals;
}
