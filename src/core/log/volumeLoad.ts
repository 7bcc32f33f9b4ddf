import { setsIn, type GroupOf, type LogColumn } from "./columns";

/** The columns of a log that volume load needs. A row is there when its reps are. */
export interface LoadedSets {
  readonly load: LogColumn;
  readonly reps: LogColumn;
  /** How many sets a row stands for; one where it is blank or the column is not there. */
  readonly sets?: LogColumn | undefined;
}

/**
 * Volume load, Σ sets × reps × load, of each group of rows. Without a load ("BW") a row adds nothing, since
 * nothing was lifted that the log knows of.
 *
 * Source: common practice, no source.
 *
 * @param log - The log by columns, a place a row; null is not recorded.
 * @param groupOf - Which group a row counts in, from 0 on.
 * @param groups - How many groups there are.
 * @returns The volume load of each group, in the load's unit.
 */
export function volumeLoads(log: LoadedSets, groupOf: GroupOf, groups: number): number[] {
  const totals = Array<number>(groups).fill(0);
  log.reps.forEach((reps, row) => {
    const load = log.load[row] ?? null;
    if (reps === null || load === null) return;
    totals[groupOf(row)]! += setsIn(log.sets, row) * reps * load;
  });
  return totals;
}
