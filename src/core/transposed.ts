/** A table's columns, from its rows, which are of one length; or rows from columns. */
export function transposed<T>(rows: readonly (readonly T[])[]): T[][] {
  const [first = []] = rows;
  if (rows.some(({ length }) => length !== first.length)) {
    throw new Error(`rows of ${first.length} columns and of others make no table`);
  }
  return first.map((_item, column) => rows.map((row) => row[column]!));
}
