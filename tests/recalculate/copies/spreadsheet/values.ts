import { cellAt, elementAt } from "../../../present";

/** The values of the small spreadsheet that the tests of copies calculate with. */

/** An error in a cell. */
export class Problem {
  constructor(readonly code: string) {}
}

/** What one cell holds; `null` is a blank. */
export type Scalar = number | string | boolean | null | Problem;

/** Cells in rows. A reference still knows its blanks, in anything worked out they are 0. */
export class Matrix {
  readonly rows: number;
  readonly columns: number;

  constructor(
    readonly cells: readonly (readonly Scalar[])[],
    readonly isReference = false,
  ) {
    this.rows = cells.length;
    this.columns = elementAt(cells, 0).length;
  }
}

export type Plain = Scalar | Matrix;

/** A LAMBDA, ready to be called. */
export type Callable = (...given: Value[]) => Value;

export type Value = Plain | Callable;

export const value = new Problem("#VALUE!");
export const notAvailable = new Problem("#N/A");

export const matrixOf = (given: Plain): Matrix =>
  given instanceof Matrix ? given : new Matrix([[given]]);

/** What is worked out from rows: a single cell of them is a value by itself. */
export function workedOut(cells: readonly (readonly Scalar[])[]): Plain {
  const [first] = cells;
  if (first === undefined || first.length === 0) return new Problem("#CALC!");
  const filled = cells.map((row) => (row.includes(null) ? row.map((cell) => cell ?? 0) : row));
  return cells.length === 1 && first.length === 1 ? cellAt(filled, 0, 0) : new Matrix(filled);
}

/**
 * A function of single cells over ranges: a row and a column stretch, and where one range is longer than
 * another its last cells are #N/A. A copy's formulas come here for each of their signs, so it makes no more than it must.
 */
export function overRanges(given: readonly Plain[], of: (...cells: Scalar[]) => Scalar): Plain {
  let rows = 0;
  let columns = 0;
  for (const each of given) {
    if (!(each instanceof Matrix)) continue;
    rows = Math.max(rows, each.rows);
    columns = Math.max(columns, each.columns);
  }
  if (rows === 0) return of(...(given as Scalar[])) ?? 0;
  return cellByCell(rows, columns, (row, column) => {
    const cells = across(given, row, column);
    return cells === undefined ? notAvailable : of(...cells);
  });
}

/** The same of one range. */
export function overOne(given: Plain, of: (cell: Scalar) => Scalar): Plain {
  if (!(given instanceof Matrix)) return of(given) ?? 0;
  const { cells, rows, columns } = given;
  return cellByCell(rows, columns, (row, column) => of(cells[row]![column]!));
}

/** The same of two. */
export function overTwo(
  one: Plain,
  other: Plain,
  of: (one: Scalar, other: Scalar) => Scalar,
): Plain {
  if (!(one instanceof Matrix || other instanceof Matrix)) return of(one, other) ?? 0;
  if (!(other instanceof Matrix)) return overOne(one, (cell) => of(cell, other));
  return one instanceof Matrix
    ? overRanges([one, other], of)
    : overOne(other, (cell) => of(one, cell));
}

/** Cells that are worked out one by one; a blank is 0. */
function cellByCell(
  rows: number,
  columns: number,
  of: (row: number, column: number) => Scalar,
): Plain {
  if (rows === 1 && columns === 1) return of(0, 0) ?? 0;
  const found: Scalar[][] = [];
  for (let row = 0; row < rows; row++) {
    const line: Scalar[] = [];
    for (let column = 0; column < columns; column++) line.push(of(row, column) ?? 0);
    found.push(line);
  }
  return new Matrix(found);
}

/** What ranges have in one place, each stretched to it; nothing where one of them ends before. */
function across(given: readonly Plain[], row: number, column: number): Scalar[] | undefined {
  const cells: Scalar[] = [];
  for (const each of given) {
    if (each instanceof Matrix) {
      const cell = each.cells[each.rows === 1 ? 0 : row]?.[each.columns === 1 ? 0 : column];
      if (cell === undefined) return undefined;
      cells.push(cell);
    } else cells.push(each);
  }
  return cells;
}

/** The first error among these, if there is one. */
export function problemIn(cells: readonly Scalar[]): Problem | undefined {
  for (const cell of cells) if (cell instanceof Problem) return cell;
  return undefined;
}

/** A cell as a number, as arithmetic takes it. */
export function numberIn(cell: Scalar): number | Problem {
  if (cell instanceof Problem) return cell;
  if (cell === null) return 0;
  if (typeof cell === "boolean") return cell ? 1 : 0;
  if (typeof cell === "number") return cell;
  return /^\s*[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?\s*$/i.test(cell) ? Number(cell) : value;
}

/** A cell as text; a number has 15 digits. */
export function textIn(cell: Scalar): string | Problem {
  if (cell instanceof Problem) return cell;
  if (cell === null) return "";
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  if (typeof cell === "string") return cell;
  return String(
    Number.isInteger(cell) && Math.abs(cell) < 1e15 ? cell : Number(cell.toPrecision(15)),
  );
}

/** A cell as a condition. */
export function truthIn(cell: Scalar): boolean | Problem {
  if (typeof cell === "boolean") return cell;
  if (typeof cell === "string") return /^(true|false)$/i.test(cell) ? /true/i.test(cell) : value;
  const number = numberIn(cell);
  return number instanceof Problem ? number : number !== 0;
}

/** A number that may have come to none. */
export const finite = (number: number): Scalar =>
  Number.isFinite(number) ? number : new Problem("#NUM!");
