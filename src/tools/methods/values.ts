/** What a name of a worked example stands for: one cell, a column of cells, or a grid. */
export type Cell = number | string | null;
export type Column = readonly Cell[];
export interface Grid {
  readonly rows: readonly Column[];
}
export type Value = Cell | Column | Grid;

export const isColumn = (value: Value): value is Column => Array.isArray(value);
export const isGrid = (value: Value): value is Grid =>
  typeof value === "object" && value !== null && "rows" in value;

/** The cells of a value, row by row. */
export function cellsOf(value: Value): Column {
  if (isGrid(value)) return value.rows.flat();
  return isColumn(value) ? value : [value];
}

/** The numbers of a value; a text among them is a mistake in the example. */
export const numbersOf = (value: Value): number[] => cellsOf(value).map(numberOf);

export function numberOf(value: Value): number {
  if (typeof value === "number") return value;
  throw new Error(`${shownValue(value)} is no number`);
}

/** Does something to one value, or to each of a column. */
export const each = (value: Value, change: (number: number) => number): Value =>
  isColumn(value) ? value.map((cell) => change(numberOf(cell))) : change(numberOf(value));

/** Puts two values together, cell by cell; a single one goes with all. */
export function together(a: Value, b: Value, join: (a: number, b: number) => number): Value {
  if (isColumn(a) && isColumn(b)) {
    if (a.length !== b.length) throw new Error(`${a.length} values beside ${b.length}`);
    return a.map((cell, i) => join(numberOf(cell), numberOf(b[i] ?? null)));
  }
  if (isColumn(a)) return a.map((cell) => join(numberOf(cell), numberOf(b)));
  if (isColumn(b)) return b.map((cell) => join(numberOf(a), numberOf(cell)));
  return join(numberOf(a), numberOf(b));
}

/** More values than this in a column are counted and not shown. */
const MOST_SHOWN = 12;

/** A value as a reader sees it: six digits, a real minus. */
export function shownValue(value: Value): string {
  if (isGrid(value)) {
    return value.rows.length > MOST_SHOWN
      ? `(${value.rows.length} rows)`
      : `{${value.rows.map((row) => row.map(shownValue).join(", ")).join("; ")}}`;
  }
  if (isColumn(value)) {
    return value.length > MOST_SHOWN
      ? `(${value.length} values)`
      : `{${value.map(shownValue).join("; ")}}`;
  }
  if (value === null) return "";
  if (typeof value === "string") return `"${value}"`;
  return String(Number(value.toPrecision(6))).replace("-", "−");
}
