import { CellError, invalid } from "./error";
import { firstCell, isSingle, sizeOf, toRange } from "./grid";
import { canHeadLabels, hasHeaderRow } from "./header";
import { keyContent } from "./keys";
import { nthRow } from "./place";
import { readQuantity, type Quantity } from "./quantity";
import { holdsError } from "./rows";
import { HostError, readCell } from "./value";

/** One filled row of a table argument. */
export interface TableRow {
  /** Its row in the range, for messages. */
  readonly row: number;
  /** The name in the first column, where the table has one and the cell is not blank. */
  readonly label: number | string | undefined;
  /** Its numbers, a column each; `null` for a blank cell or a column that is not there. */
  readonly numbers: readonly (number | null)[];
}

/** What the columns of a table argument are. */
export interface TableShape {
  readonly name: string;
  readonly columns: readonly Quantity[];
  /** How many of the columns must be there; all unless given. */
  readonly least?: number;
  /** Whether a column of names may stand before them. */
  readonly canHaveLabels?: boolean;
}

/**
 * Reads a table argument: a block plan, a rack of plates. Its header row is its own and hides none elsewhere; a
 * blank row is not there; the first bad cell is the error of the whole call, named by its row.
 */
export function readTable(given: unknown, shape: TableShape): TableRow[] {
  const { name, columns, least = columns.length, canHaveLabels = false } = shape;
  const range = toRange(given);
  if (isSingle(range) && isBlank(firstCell(range))) return [];
  const labelled = canHaveLabels && range.columns === columns.length + 1;
  const width = labelled ? columns.length : range.columns;
  if (width < least || width > columns.length) {
    throw invalid(`${name} has ${sizeOf(range)}; expected ${columnList(shape)}`);
  }
  const numbersFrom = labelled ? 1 : 0;
  const numberCells = range.cells.map((row) => row.slice(numbersFrom));
  const header =
    hasHeaderRow([{ rows: range.rows, columns: width, cells: numberCells }]) &&
    canHeadLabels(firstCell(range));

  const rows: TableRow[] = [];
  for (const [row, cells] of range.cells.entries()) {
    if (header && row === 0) continue;
    const label = labelled ? readLabel(cells[0], row, name) : undefined;
    const numbers = columns.map((quantity, column) =>
      readNumber(cells[numbersFrom + column], quantity, row),
    );
    // Desktop Excel fills a blank row with zeros: only a number that cannot be zero shows that it is there.
    const isThere = numbers.some((number) => number !== null && number !== 0);
    if (isThere || label !== undefined) rows.push({ row: row + 1, label, numbers });
  }
  return rows;
}

/** Whether the one cell of a range holds nothing: a table that is still to come. */
function isBlank(raw: unknown): boolean {
  const value = readCell(raw);
  return value === null || value === 0;
}

/** A number that a table's row cannot do without. */
export function requiredIn({ row, numbers }: TableRow, column: number, quantity: Quantity): number {
  const number = numbers[column] ?? null;
  if (number !== null) return number;
  throw invalid(`${nthRow(row)} of ${quantity.name} is blank; expected ${quantity.expected}`);
}

function readLabel(raw: unknown, row: number, name: string): number | string | undefined {
  const value = readCell(raw);
  if (value instanceof HostError) throw holdsError(value, row, name);
  return value === null || value === 0 ? undefined : keyContent(raw);
}

function readNumber(raw: unknown, quantity: Quantity, row: number): number | null {
  const value = readCell(raw);
  const number = readQuantity(value, quantity);
  if (!(number instanceof CellError)) return number;
  throw value instanceof HostError
    ? holdsError(value, row, quantity.name)
    : number.of(nthRow(row + 1));
}

function columnList({ columns, least = columns.length, canHaveLabels }: TableShape): string {
  const names = columns.map(({ name }, i) => (i < least ? name : `[${name}]`));
  return `the columns ${[...(canHaveLabels ? ["[name]"] : []), ...names].join(", ")}`;
}
