import { CellError, type Content, type Grid } from "../../cells";
import type { Argument } from "../formula/argument";
import { areaOf } from "../formula/reference";

/** The rows of a sheet that a result goes with, one of its own rows for each. Counted from 0. */
export interface Rows {
  /** Where no name was said, the formula's own sheet. */
  readonly sheet: string | undefined;
  readonly first: number;
  readonly count: number;
  /** The column farthest to the right among those it reads. */
  readonly lastColumn: number;
}

/** Columns of which one starts in another row than the others: their results would stand beside nobody's row. */
export interface RowsApart {
  readonly apart: readonly string[];
}

/**
 * The rows that a result goes beside: those of its columns, where the function answers row by row. That is seen, not
 * listed: it gives as many rows as it reads, and for one of them alone what it gave in that one's place.
 */
export function besideRows(
  args: readonly Argument[],
  values: readonly unknown[],
  grid: Grid,
  call: (...values: unknown[]) => Grid,
): Rows | RowsApart | undefined {
  const columns = args.flatMap((argument, index) => {
    const rows = values[index];
    if (argument.kind !== "cells" || argument.only !== undefined || !Array.isArray(rows)) return [];
    const area = areaOf(argument.reference);
    return area === undefined ? [] : [{ argument, area, count: rows.length, index }];
  });
  const count = Math.max(0, ...columns.map((column) => column.count));
  const long = columns.filter((column) => column.count === count);
  const [one] = long;
  if (one === undefined || grid.length !== count) return undefined;
  if (columns.some((column) => column.count !== count && column.count !== 1)) return undefined;
  const rowAlone = (row: number) =>
    values.map((value, index) =>
      long.some((column) => column.index === index) ? [(value as unknown[])[row]] : value,
    );
  const samples = new Set([0, count >> 1, count - 1]);
  if (![...samples].every((row) => isSame(call(...rowAlone(row)), grid[row]))) return undefined;

  const { area } = one;
  const starts = new Set(long.map((column) => `${column.area.sheet}!${column.area.startRow}`));
  if (starts.size > 1) return { apart: long.map((column) => column.argument.reference) };
  return {
    sheet: area.sheet,
    first: area.startRow,
    count,
    lastColumn: Math.max(...long.map((column) => column.area.endColumn)),
  };
}

const isSame = (alone: Grid, row: readonly Content[] | undefined) =>
  alone.length === 1 && JSON.stringify(alone[0]?.map(plain)) === JSON.stringify(row?.map(plain));

/** An error alone says "row 1" of what says "row 7" among others. */
const plain = (content: Content) => (content instanceof CellError ? content.code : content);
