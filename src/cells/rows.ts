import { BadCells } from "./badCells";
import { entriesOf } from "./entries";
import { CellError, invalid } from "./error";
import { cellAt, firstCell, isGiven, isSingle, sizeOf, topRow, toRange, type Range } from "./grid";
import { canHeadLabels, hasHeaderRow } from "./header";
import { nthRow } from "./place";
import { readQuantity, type Quantity } from "./quantity";
import { HostError, readCell, type CellValue } from "./value";

/** A column of numbers, read row by row: `null` where the row holds none. */
export type NumberColumn = readonly (number | null)[];

/** A column to read: what was given, and what its numbers stand for. */
export interface ColumnInput {
  readonly given: unknown;
  readonly quantity: Quantity;
}

/** Columns of labels beside the numbers (keys, groups, names), read as they are. */
export interface LabelInput {
  readonly given: unknown;
  readonly name: string;
  /** Whether a single blank cell stands for no labels at all, as Sheets may pass a skipped argument. */
  readonly canBeBlank?: boolean;
}

/** Data columns read together. */
export interface Rows<N extends string, L extends string> {
  /** How many rows of data there are, without the header. */
  readonly count: number;
  /** Where the first row of data is in the range, for messages: 1, or 2 under a header. */
  readonly firstRow: number;
  /** The numbers of each column; `undefined` where the column was not given. */
  readonly numbers: Readonly<Record<N, NumberColumn | undefined>>;
  /** The raw cells of each label range, a row a row; `undefined` where it was not given. */
  readonly labels: Readonly<Record<L, Labels | undefined>>;
  /** The heading of a number column, where there is a header row. */
  heading(name: N): string | undefined;
  /** Whether a row holds anything in its number columns; a missing value ("DNS") is something. */
  isThere(row: number): boolean;
}

/** A range of labels: its headings (blank without a header row), and its raw cells row by row. */
export interface Labels {
  readonly headings: readonly (string | undefined)[];
  readonly cells: readonly (readonly unknown[])[];
}

/**
 * Reads data columns that belong together, row by row. A header row is skipped, a single cell stretches, and every
 * cell of every column is checked. Bad ones are the error of the whole call, counted, the first three named: nothing
 * is dropped unseen.
 */
export function readRows<N extends string, L extends string = never>(
  columns: Readonly<Record<N, ColumnInput>>,
  labels: Readonly<Record<L, LabelInput>> = {} as Record<L, LabelInput>,
): Rows<N, L> {
  const numberRanges = entriesOf(columns)
    .filter(([, { given }]) => isGiven(given))
    .map(([key, { given, quantity }]) => ({
      key,
      quantity,
      name: quantity.name,
      range: uprightColumn(toRange(given), quantity.name),
    }));
  const labelRanges = entriesOf(labels)
    .filter(([, { given, canBeBlank }]) => (canBeBlank ? !isBlank(given) : isGiven(given)))
    .map(([key, { given, name }]) => ({ key, name, range: toRange(given) }));

  const rows = commonLength([...numberRanges, ...labelRanges]);
  const uprightLabels = labelRanges.map((label) => ({
    ...label,
    single: isSingle(label.range),
    range: matchLength(label.range, rows),
  }));
  const header =
    hasHeaderRow(numberRanges.map(({ range }) => range)) &&
    uprightLabels.every(({ single, range }) => single || topRow(range).every(canHeadLabels));
  const start = header ? 1 : 0;

  const numbers = {} as Record<N, NumberColumn | undefined>;
  const bad = new BadCells();
  for (const { key, quantity, range } of numberRanges) {
    numbers[key] = readColumn(range, quantity, rows, start, bad);
  }
  bad.expectNone();
  const labelColumns = {} as Record<L, Labels | undefined>;
  for (const { key, single, range } of uprightLabels) {
    const headings = topRow(range).map((raw) => (header && !single ? textOf(raw) : undefined));
    labelColumns[key] = { headings, cells: range.cells.slice(start) };
  }
  return {
    count: rows - start,
    firstRow: start + 1,
    numbers,
    labels: labelColumns,
    heading(name) {
      const column = numberRanges.find(({ key }) => key === name);
      return header && column ? textOf(firstCell(column.range)) : undefined;
    },
    isThere(row) {
      return numberRanges.some(({ range, quantity }) => {
        if (isSingle(range)) return false;
        const value = readCell(cellAt(range, row + start, 0));
        return value !== null && !(value === 0 && quantity.zeroIsBlank);
      });
    },
  };
}

/** The number that a column has in a row; `null` where it has none there, or was not given. */
export const numberAt = (column: NumberColumn | undefined, row: number): number | null =>
  column?.[row] ?? null;

/** Whether an argument is left out, or is one blank cell. */
function isBlank(argument: unknown): boolean {
  const range = toRange(argument);
  const value = readCell(firstCell(range));
  return isSingle(range) && (value === null || value === 0);
}

/** A column as it stands, a row turned upright; a block is no column. */
function uprightColumn(range: Range, name: string): Range {
  if (range.columns === 1) return range;
  if (range.rows === 1) return turned(range);
  throw invalid(`${name} has ${sizeOf(range)}; expected one column`);
}

const turned = (range: Range): Range => ({
  rows: range.columns,
  columns: 1,
  cells: topRow(range).map((raw) => [raw]),
});

/** Labels beside data that lie along a row are turned upright with them; a single label stretches. */
function matchLength(range: Range, rows: number): Range {
  if (range.rows === rows) return range;
  if (isSingle(range)) return { ...range, rows, cells: Array(rows).fill(topRow(range)) };
  return turned(range);
}

interface Named {
  readonly name: string;
  readonly range: Range;
}

/** How many rows the columns have together; two that differ are named. */
function commonLength(columns: readonly Named[]): number {
  const tallest = columns.find(({ range }) => range.rows > 1);
  if (!tallest) return 1;
  const { rows } = tallest.range;
  for (const column of columns) {
    const { range } = column;
    if (range.rows !== rows && !isSingle(range) && !(range.rows === 1 && range.columns === rows)) {
      throw invalid(
        `${tallest.name} has ${sizeOf(tallest.range)} and ${column.name} has ${sizeOf(range)}; ` +
          "expected the same rows in both",
      );
    }
  }
  return rows;
}

function readColumn(
  range: Range,
  quantity: Quantity,
  rows: number,
  start: number,
  bad: BadCells,
): NumberColumn {
  const stretched = isSingle(range);
  const column: (number | null)[] = [];
  for (let row = start; row < rows; row++) {
    const value = readCell(cellAt(range, stretched ? 0 : row, 0));
    const number = readQuantity(value, quantity);
    if (number instanceof CellError) {
      bad.add(row, quantity.name, problemOf(number, value, row, quantity.name));
      if (stretched) break;
    } else {
      column.push(number);
    }
  }
  return column;
}

function problemOf(number: CellError, value: CellValue, row: number, name: string): CellError {
  return value instanceof HostError ? holdsError(value, row, name) : number.of(nthRow(row + 1));
}

/** In a report or a table a cell that holds an error stops the call: leaving its row out would be unseen. */
export const holdsError = (error: HostError, row: number, name: string): CellError =>
  invalid(`${nthRow(row + 1)} of ${name} holds ${error.code}`);

function textOf(raw: unknown): string | undefined {
  const value = readCell(raw);
  return typeof value === "string" ? value : undefined;
}

/** The columns of a block of numbers, to be read row by row: one column for each of the block's own. */
export function blockColumns(given: unknown, quantity: Quantity): Record<string, ColumnInput> {
  const range = toRange(given);
  return Object.fromEntries(
    Array.from({ length: range.columns }, (_column, column) => [
      String(column),
      { given: range.cells.map((row) => [row[column]]), quantity },
    ]),
  );
}
