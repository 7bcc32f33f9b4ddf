import { zip } from "./zip";

/** A table's columns, from its rows, which are of one length; or rows from columns. */
export function transposed<T>(rows: readonly (readonly T[])[]): T[][] {
  const [first = [], ...more] = rows;
  const columns = first.map((item) => [item]);
  for (const row of more) for (const [column, item] of zip(columns, row)) column.push(item);
  return columns;
}
