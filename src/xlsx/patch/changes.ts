import { LAST_COLUMN, type Area } from "../../formula/address";
import type { CellValue } from "../model";

/** What is to change about one cell; what is left out stays as it is. */
export interface CellChange {
  /** The value the file is to keep for it. */
  readonly value: CellValue;
  /** The cells its array formula is to fill. */
  readonly area?: Area;
  /** Another formula in place of its own, or none at all. */
  readonly formula?: string | null;
}

/** A change and the column of its cell, in a row. */
export interface ChangeInRow extends CellChange {
  readonly column: number;
}

/** The cells to change in one sheet. */
export interface SheetChanges {
  /** How many cells change. */
  count(): number;
  /** What changes about a cell, if anything does. */
  at(row: number, column: number): CellChange | undefined;
  /** Has a cell changed, whatever was said of it before; or leaves it as it is. */
  put(row: number, column: number, change: CellChange | undefined): void;
  /** Rows from the top, each with its cells from the left. */
  rows(): Iterable<readonly [row: number, cells: readonly ChangeInRow[]]>;
}

/**
 * Gathers the changes to a sheet. One result can fill a million cells, and an object for each of them would take
 * more memory than the workbook itself: so these are two lists, cells and what becomes of them, which for nearly
 * all is a value and nothing else.
 */
export function createChanges(): SheetChanges {
  let places: number[] = [];
  let changes: (CellValue | CellChange | undefined)[] = [];
  let furthest = -1;
  let isInOrder = true;

  /** Puts the cells in order, each as it was put last. */
  function settle(): void {
    if (isInOrder) return;
    const order = Uint32Array.from(places.keys());
    order.sort((one, other) => places[one]! - places[other]! || one - other);
    const isLast = (index: number, at: number) => places[order[at + 1] ?? -1] !== places[index];
    const kept = order.filter((index, at) => changes[index] !== undefined && isLast(index, at));
    places = Array.from(kept, (index) => places[index]!);
    changes = Array.from(kept, (index) => changes[index]);
    furthest = places.at(-1) ?? -1;
    isInOrder = true;
  }

  return {
    count() {
      settle();
      return places.length;
    },
    at(row, column) {
      settle();
      const place = placeOf(row, column);
      let low = 0;
      let high = places.length;
      while (low < high) {
        const middle = (low + high) >> 1;
        if (places[middle]! < place) low = middle + 1;
        else high = middle;
      }
      return places[low] === place ? changeOf(changes[low]!) : undefined;
    },
    put(row, column, change) {
      const place = placeOf(row, column);
      const isNew = place > furthest;
      if (isNew && change === undefined) return;
      if (isNew) furthest = place;
      else isInOrder = false;
      places.push(place);
      changes.push(change && isValueAlone(change) ? change.value : change);
    },
    *rows() {
      settle();
      for (let at = 0; at < places.length;) {
        const row = Math.floor(places[at]! / COLUMNS);
        const end = (row + 1) * COLUMNS;
        const cells: ChangeInRow[] = [];
        for (; at < places.length && places[at]! < end; at++) {
          cells.push({ column: places[at]! % COLUMNS, ...changeOf(changes[at]!) });
        }
        yield [row, cells];
      }
    },
  };
}

/** A cell's row and column as one number, in the order in which a file has its cells. */
const COLUMNS = LAST_COLUMN + 1;
const placeOf = (row: number, column: number) => row * COLUMNS + column;

const isValueAlone = ({ area, formula }: CellChange) => area === undefined && formula === undefined;

const changeOf = (kept: CellValue | CellChange): CellChange =>
  kept !== null && typeof kept === "object" ? kept : { value: kept };
