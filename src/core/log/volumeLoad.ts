/** The columns of a log that volume load needs; `null` where nothing is written down. */
export interface LoadedSets {
  readonly load: readonly (number | null)[];
  readonly reps: readonly (number | null)[];
  /** How many sets a row stands for; one where it is blank or the column is not there. */
  readonly sets?: readonly (number | null)[] | undefined;
}

/**
 * Volume load, Σ sets × reps × load, of each group of rows. A row is there when its reps are; without a load
 * ("BW") it adds nothing, since nothing was lifted that the log knows of.
 */
export function volumeLoads(
  log: LoadedSets,
  groupOf: (row: number) => number,
  groups: number,
): number[] {
  const totals = Array<number>(groups).fill(0);
  log.reps.forEach((reps, row) => {
    const load = log.load[row];
    if (reps === null || load === null) return;
    totals[groupOf(row)] += (log.sets?.[row] ?? 1) * reps * load;
  });
  return totals;
}
