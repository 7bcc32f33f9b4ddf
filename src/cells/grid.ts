import type { CellError } from "./error";

/** What a function puts in one cell. */
export type Content = number | string | CellError;

/** What a function gives back: rows of cells, all of one width. */
export type Grid = Content[][];

/** A range as it came from the host: rows of one width, at least one cell. */
export interface Range {
  readonly rows: number;
  readonly columns: number;
  /** The raw cell; a range of one row or one column is not stretched here. */
  readonly cells: readonly (readonly unknown[])[];
}

/** Whether an argument was given at all. Hosts pass one that was not as `null` or `undefined`. */
export const isGiven = (argument: unknown) => argument !== null && argument !== undefined;

/** The argument as a range, whatever the host made of it: a single cell, rows of cells, an array data type. */
export function toRange(argument: unknown): Range {
  const rows = rowsOf(argument);
  const columns = rows.reduce((widest, row) => Math.max(widest, row.length), 1);
  // Hosts pass rows of one width; a long log need not be copied to find that out.
  const cells = rows.every((row) => row.length === columns)
    ? rows
    : rows.map((row) => [...row, ...Array<unknown>(columns - row.length).fill(null)]);
  return { rows: cells.length, columns, cells };
}

function rowsOf(argument: unknown): (readonly unknown[])[] {
  const elements = arrayElements(argument);
  if (!Array.isArray(elements)) return [[argument]];
  return elements.some(Array.isArray)
    ? elements.map((row: unknown) => (Array.isArray(row) ? (row as unknown[]) : [row]))
    : [elements as unknown[]];
}

/** Excel's array data type keeps its rows in `elements`. */
function arrayElements(argument: unknown): unknown {
  const isArrayType =
    typeof argument === "object" &&
    argument !== null &&
    "elements" in argument &&
    !Array.isArray(argument);
  return isArrayType ? argument.elements : argument;
}

/** Whether the range is one cell. */
export const isSingle = (range: Range) => range.rows === 1 && range.columns === 1;

/** A range's cell; nothing outside the range. */
export const cellAt = ({ cells }: Range, row: number, column: number): unknown =>
  cells[row]?.[column];

/** The first cell of a range, which is all there is of a single one. */
export const firstCell = (range: Range): unknown => cellAt(range, 0, 0);

/** The top row of a range. */
export const topRow = ({ cells: [top = []] }: Range): readonly unknown[] => top;

/** The cells of a range along a row or a column, in reading order. */
export const cellsOf = (range: Range): unknown[] => range.cells.flat();

/** How a message tells a range's size: "3 rows", "1 row of 4 columns". */
export function sizeOf({ rows, columns }: Range): string {
  const count = (n: number, word: string) => `${n} ${word}${n === 1 ? "" : "s"}`;
  return columns === 1 ? count(rows, "row") : `${count(rows, "row")} of ${columns} columns`;
}

/** How many columns there are in rows of one width. */
export const widthOf = (rows: readonly (readonly unknown[])[]): number => rows[0]?.length ?? 0;

/** What stands in a result of one cell; nothing where there are more. */
export function onlyCell<T>(rows: readonly (readonly T[])[]): T | undefined {
  const [row] = rows;
  return rows.length === 1 && row?.length === 1 ? row[0] : undefined;
}

/** A result of one cell. */
export const single = (content: Content): Grid => [[content]];
