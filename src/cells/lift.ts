import type { Argument } from "./argument";
import { CellError, invalid } from "./error";
import { cellAt, firstCell, isSingle, sizeOf, type Content, type Grid, type Range } from "./grid";
import { hasHeaderRow } from "./header";
import { nthColumn, nthRow } from "./place";
import { readCell } from "./value";

export type Arguments = Readonly<Record<string, Argument<unknown>>>;

/** The values of one cell position, an argument each. */
export type Values<A extends Arguments> = {
  [K in keyof A]: A[K] extends Argument<infer T> ? T : never;
};

/** What a lifted call gives in one position: a result, an error, or `null` where the row waits. */
export type Lifted<R> = (R | CellError | null)[][];

/**
 * Lifts a function of single values over ranges, in one call: a single value stretches, equal shapes pair up, a
 * column against a row makes a grid. A header row and a row that is not filled in yet give `""`; a bad row gives
 * its own error, and the others are computed.
 */
export function lift<A extends Arguments>(
  inputs: A,
  compute: (values: Values<A>) => Content,
): Grid {
  const rows: (Content | null)[][] = liftOver(inputs, compute);
  // In place: a copy of a column of a million rows is a second column.
  for (const row of rows) {
    for (let column = 0; column < row.length; column++) row[column] ??= "";
  }
  return rows as Grid;
}

/** `lift` for any kind of result; the layout is the caller's. */
export function liftOver<A extends Arguments, R>(
  inputs: A,
  compute: (values: Values<A>) => R,
): Lifted<R> {
  const one = single(inputs, compute);
  if (one) return one;
  const list = Object.entries(inputs);
  const shape = commonShape(list.map(([, input]) => input));
  const readers = list.map(([key, input]) => [key, cellReader(input)] as const);
  const dataRanges = list
    .filter(([, input]) => input.header === "together")
    .map(([, input]) => input.range);
  const header = hasHeaderRow(dataRanges);

  return Array.from({ length: shape.rows }, (_row, row) =>
    Array.from({ length: shape.columns }, (_column, column) =>
      header && row === 0 ? null : resultAt(row, column),
    ),
  );

  function resultAt(row: number, column: number): R | CellError | null {
    const values: Record<string, unknown> = {};
    let waits = false;
    for (const [key, read] of readers) {
      const value = read(row, column);
      if (value instanceof CellError) return value.of(placeIn(shape, row, column));
      if (value === null) waits = true;
      values[key] = value;
    }
    if (waits) return null;
    try {
      return compute(values as Values<A>);
    } catch (error) {
      if (error instanceof CellError) return error.at(placeIn(shape, row, column));
      throw error;
    }
  }
}

/** The same of single cells, where nothing has to be paired: a filled-down column calls 50,000 times. */
function single<A extends Arguments, R>(
  inputs: A,
  compute: (values: Values<A>) => R,
): Lifted<R> | undefined {
  const values: Record<string, unknown> = {};
  let waits = false;
  let problem: CellError | undefined;
  for (const [key, { range, read }] of Object.entries(inputs)) {
    if (!isSingle(range)) return undefined;
    if (problem) continue;
    const value = read(readCell(firstCell(range)));
    if (value instanceof CellError) problem = value;
    else if (value === null) waits = true;
    values[key] = value;
  }
  if (problem) return [[problem]];
  if (waits) return [[null]];
  try {
    return [[compute(values as Values<A>)]];
  } catch (error) {
    if (error instanceof CellError) return [[error]];
    throw error;
  }
}

/** Reads an argument at a position, stretching a single cell, a row or a column; single cells are read once. */
function cellReader<T>({ range, read, header }: Argument<T>) {
  if (isSingle(range)) {
    const value = read(readCell(firstCell(range)));
    return () => value;
  }
  const tall = range.rows > 1;
  const wide = range.columns > 1;
  const ownHeader = header === "alone" && hasHeaderRow([range]);
  return (row: number, column: number) =>
    ownHeader && row === 0
      ? null
      : read(readCell(cellAt(range, tall ? row : 0, wide ? column : 0)));
}

interface Shape {
  readonly rows: number;
  readonly columns: number;
}

/** The shape of the result, or an error that names the two arguments that do not go together. */
export function commonShape(inputs: readonly Pick<Argument<unknown>, "name" | "range">[]): Shape {
  const grid = inputs.find(({ range }) => range.rows > 1 && range.columns > 1);
  const column = inputs.find(({ range }) => range.rows > 1);
  const row = inputs.find(({ range }) => range.columns > 1);
  for (const input of inputs) {
    const { range } = input;
    const partner =
      (range.rows > 1 || range.columns > 1) && grid !== undefined
        ? differs(range, grid.range) && grid
        : (range.rows > 1 && range.rows !== column?.range.rows && column) ||
          (range.columns > 1 && range.columns !== row?.range.columns && row);
    if (partner) throw mismatch(partner, input);
  }
  const shape = { rows: column?.range.rows ?? 1, columns: row?.range.columns ?? 1 };
  expectRoomFor(shape);
  return shape;
}

/** As many cells as a column of a sheet has; no host takes a larger result. */
const MOST_CELLS = 1_048_576;

/** Refuses a result that no host would take: a long column against a long row. */
export function expectRoomFor({ rows, columns }: Shape): void {
  if (rows * columns <= MOST_CELLS) return;
  throw invalid(
    `the result would have ${rows} rows of ${columns} columns; expected at most ${MOST_CELLS} cells`,
  );
}

const differs = (a: Range, b: Range) => a.rows !== b.rows || a.columns !== b.columns;

function mismatch(
  a: Pick<Argument<unknown>, "name" | "range">,
  b: Pick<Argument<unknown>, "name" | "range">,
): CellError {
  return invalid(
    `${a.name} has ${sizeOf(a.range)} and ${b.name} has ${sizeOf(b.range)}; expected ranges of the same size`,
  );
}

/** Where a position is, as a message says it; nothing for a call on single cells. */
export function placeIn(shape: Shape, row: number, column: number): string {
  const places = [];
  if (shape.rows > 1) places.push(nthRow(row + 1));
  if (shape.columns > 1) places.push(nthColumn(column + 1));
  return places.join(", ");
}
