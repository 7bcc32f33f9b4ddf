import { LAST_COLUMN, meet } from "../../formula/address";
import type { FormulaCell } from "../book";
import type { Interval, Intervals } from "./intervals";
import { indexIntervals } from "./intervals";
import type { Reads, SheetArea } from "./reads";

/** Finds formulas by the cells they read, each once. */
export interface Readers {
  /** The formulas, of those not taken yet, that read a cell of this area. */
  take(place: SheetArea): FormulaCell[];
}

/** Areas of more columns than these are kept apart, not column by column. */
const WIDE = 64;

/** Keeps formulas by what they read; one that may read anything is found at once, wherever one looks. */
export function indexReaders(formulas: Iterable<readonly [FormulaCell, Reads]>): Readers {
  const byColumn = new Map<string, Interval<FormulaCell>[]>();
  const apart: [FormulaCell, SheetArea][] = [];
  const anywhere: FormulaCell[] = [];
  for (const [cell, reads] of formulas) {
    if (reads.anywhere) anywhere.push(cell);
    for (const { sheet, area } of reads.areas) {
      if (area.endColumn - area.startColumn > WIDE) apart.push([cell, { sheet, area }]);
      else {
        for (let column = area.startColumn; column <= area.endColumn; column++) {
          const intervals = byColumn.get(keyOf(sheet, column)) ?? [];
          byColumn.set(keyOf(sheet, column), intervals);
          intervals.push({ first: area.startRow, last: area.endRow, item: cell });
        }
      }
    }
  }
  const columns = new Map<string, Intervals<FormulaCell>>();
  for (const [key, intervals] of byColumn) columns.set(key, indexIntervals(intervals));
  const taken = new Set<FormulaCell>();

  return {
    take({ sheet, area }) {
      const found = new Set(anywhere.splice(0));
      for (
        let column = area.startColumn;
        column <= Math.min(area.endColumn, LAST_COLUMN);
        column++
      ) {
        const ofColumn = columns.get(keyOf(sheet, column))?.take(area.startRow, area.endRow) ?? [];
        for (const cell of ofColumn) found.add(cell);
      }
      for (const [cell, place] of apart) {
        if (place.sheet === sheet && meet(place.area, area)) found.add(cell);
      }
      const fresh = [...found].filter((cell) => !taken.has(cell));
      for (const cell of fresh) taken.add(cell);
      return fresh;
    },
  };
}

const keyOf = (sheet: string, column: number) => `${column} ${sheet}`;
