import { isClose } from "./closeSets";
import { reserveIn, setsIn, type GroupOf, type JudgedSets } from "./columns";

/** A log whose rows name an exercise: its place in the list of shares. */
export interface ExercisedSets extends JudgedSets {
  readonly exerciseOf: (row: number) => number;
}

/**
 * Sets close to failure per muscle, of each group of rows: a set counts for a muscle by the exercise's share in
 * it, 1 where the muscle does the work, a half where it helps.
 *
 * Source: fractional counting, Pelland et al. 2024.
 *
 * @param log - The log by columns, a place a row; null is not recorded.
 * @param shares - One row of shares an exercise, one share a muscle.
 * @param within - Reps from failure at which a set is close still; 4 is common.
 * @param groupOf - Which group a row counts in, from 0 on.
 * @param groups - How many groups there are.
 * @returns For each group, the sets of each muscle.
 */
export function muscleSets(
  log: ExercisedSets,
  shares: readonly (readonly number[])[],
  within: number,
  groupOf: GroupOf,
  groups: number,
): number[][] {
  const muscles = shares[0]?.length ?? 0;
  const totals = Array.from({ length: groups }, () => Array<number>(muscles).fill(0));
  log.reps.forEach((reps, row) => {
    if (reps === null || !isClose(reserveIn(log.reserve, row), within)) return;
    const sets = setsIn(log.sets, row);
    const total = totals[groupOf(row)]!;
    shares[log.exerciseOf(row)]!.forEach((share, muscle) => (total[muscle]! += sets * share));
  });
  return totals;
}
