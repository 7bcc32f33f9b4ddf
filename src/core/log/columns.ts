/** One column of a training log, row by row; `null` where nothing is written down. */
export type LogColumn = readonly (number | null)[];

/** The group of a row, from 0 and below the number of groups. It is asked only for rows that have reps. */
export type GroupOf = (row: number) => number;

/** The columns that tell how hard the sets of a log were. A row is there when its reps are. */
export interface JudgedSets {
  readonly reps: LogColumn;
  /**
   * Reps in reserve. Where the column is there, `null` is a set nobody judged; where the log has no such column
   * at all, every set counts as taken to failure.
   */
  readonly reserve: LogColumn | undefined;
  /** How many sets a row stands for; one where it is blank or the column is not there. */
  readonly sets: LogColumn | undefined;
}

/** How many sets a row stands for. */
export const setsIn = (sets: LogColumn | undefined, row: number): number => sets?.[row] ?? 1;

/** The reserve of a row's sets: `null` where it was not recorded, 0 where the log has no reserve column. */
export const reserveIn = (reserve: LogColumn | undefined, row: number): number | null =>
  reserve === undefined ? 0 : (reserve[row] ?? null);
