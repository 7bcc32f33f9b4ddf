import { zip } from "../../core/zip";
import type { Area } from "../../formula/address";
import type { SheetArea } from "./reads";

/** The rows of one column in which things stand, in their order, and the thing of each. */
export interface Column<T> {
  readonly rows: readonly number[];
  readonly items: readonly T[];
}

/** A part of a column, from one place in its lists up to another. */
export interface Stretch<T> extends Column<T> {
  readonly from: number;
  readonly to: number;
}

/** Columns by sheet and by number. */
export type Columns<T> = ReadonlyMap<string, ReadonlyMap<number, Column<T>>>;

/** Sorts things into the columns in which they stand. */
export function indexColumns<T>(items: Iterable<T>, placeOf: (item: T) => SheetArea): Columns<T> {
  const sheets = new Map<string, Map<number, { rows: number[]; items: T[] }>>();
  for (const item of items) {
    const { sheet, area } = placeOf(item);
    let columns = sheets.get(sheet);
    if (!columns) sheets.set(sheet, (columns = new Map()));
    for (let number = area.startColumn; number <= area.endColumn; number++) {
      let column = columns.get(number);
      if (!column) columns.set(number, (column = { rows: [], items: [] }));
      for (let row = area.startRow; row <= area.endRow; row++) {
        column.rows.push(row);
        column.items.push(item);
      }
    }
  }
  for (const columns of sheets.values()) {
    for (const [number, column] of columns) columns.set(number, inOrder(column));
  }
  return sheets;
}

/** The parts of a sheet's columns that lie in an area, but for those that hold nothing. */
export function columnsOf<T>(
  sheets: Columns<T>,
  sheet: string,
  { startRow, startColumn, endRow, endColumn }: Area,
): Stretch<T>[] {
  const columns = sheets.get(sheet);
  if (!columns) return [];
  const stretches: Stretch<T>[] = [];
  const add = ({ rows, items }: Column<T>) => {
    const from = firstFrom(rows, startRow);
    const to = (rows[from] ?? Infinity) > endRow ? from : firstFrom(rows, endRow + 1, from);
    if (from < to) stretches.push({ rows, items, from, to });
  };
  if (endColumn - startColumn < columns.size) {
    for (let number = startColumn; number <= endColumn; number++) {
      const column = columns.get(number);
      if (column) add(column);
    }
  } else {
    for (const [number, column] of columns) {
      if (number >= startColumn && number <= endColumn) add(column);
    }
  }
  return stretches;
}

function inOrder<T>({ rows, items }: { rows: number[]; items: T[] }): {
  rows: number[];
  items: T[];
} {
  if (rows.every((row, at) => (rows[at - 1] ?? row) <= row)) return { rows, items };
  const inRows = zip(rows, items).sort(([one], [other]) => one - other);
  return { rows: inRows.map(([row]) => row), items: inRows.map(([, item]) => item) };
}

/** The first place in a list of rising numbers, not before `from`, that holds this one or a larger one. */
export function firstFrom(numbers: readonly number[], least: number, from = 0): number {
  let low = from;
  let high = numbers.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (numbers[middle]! < least) low = middle + 1;
    else high = middle;
  }
  return low;
}
