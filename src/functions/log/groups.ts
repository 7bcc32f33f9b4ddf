import {
  groupRows,
  table,
  type Grid,
  type Groups,
  type Labels,
  type NumberColumn,
  type Part,
} from "../../cells";

/** The grouping of a log that is counted as a whole. */
export const allInOne = () => 0;

/** The group that each row of a log counts in; -1 for none. */
export const groupIn =
  ({ groupOf }: Groups) =>
  (row: number) =>
    groupOf[row] ?? -1;

/** The rows that are there, gathered under their keys: a row is judged by its reps. */
export const groupBy = (by: Labels, reps: NumberColumn, firstRow: number) =>
  groupRows(by, (row) => reps[row] !== null, firstRow, "by");

/** A table that leads each row with its keys, under the headings they have in the log; the values are those of each group. */
export const keyedTable = (
  { headings, keys }: Pick<Groups, "headings" | "keys">,
  measures: readonly string[],
  values: readonly (readonly Part[])[],
): Grid =>
  table(
    [...headings, ...measures],
    keys.map((key, group) => [...key, ...(values[group] ?? [])]),
  );
