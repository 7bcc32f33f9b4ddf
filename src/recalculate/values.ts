import { cellsOf, contains, covers, type Area } from "../formula/address";
import type { CellValue } from "../xlsx/model";
import type { ReadSheet } from "../xlsx/read/sheet";

/** What stands in a workbook's cells: as the file has it, and over that what was worked out. */
export interface Values {
  at(sheet: ReadSheet, row: number, column: number): CellValue;
  /** Puts values into an area, a row a row. */
  put(sheet: ReadSheet, area: Area, values: readonly (readonly CellValue[])[]): void;
  /** Empties the cells of an area but for those of another one. */
  clear(sheet: ReadSheet, area: Area, but: Area): void;
  /** Every cell that holds something else than the file has. */
  changed(): Iterable<ChangedCell>;
  /** The last row or column of a sheet's area in which anything stands. */
  last(sheet: ReadSheet, area: Area, side: "row" | "column"): number;
}

/** A cell that holds something else than the file has. */
export interface ChangedCell {
  readonly sheet: ReadSheet;
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
}

export function valuesOf(sheets: readonly ReadSheet[]): Values {
  /** By sheet and column; in a column, values stand at their row's number and nothing elsewhere. */
  const over = new Map(sheets.map((sheet) => [sheet, new Map<number, CellValue[]>()]));
  const ends = new Map<ReadSheet, Ends>();

  function at(sheet: ReadSheet, row: number, column: number): CellValue {
    const found = over.get(sheet)!.get(column)?.[row];
    return found === undefined ? (sheet.cellAt(row, column)?.value ?? null) : found;
  }

  function set(sheet: ReadSheet, row: number, column: number, value: CellValue): void {
    const columns = over.get(sheet)!;
    let ofColumn = columns.get(column);
    if (!ofColumn) columns.set(column, (ofColumn = []));
    ofColumn[row] = value;
    const reach = endsOf(sheet);
    reach.rows.set(column, Math.max(reach.rows.get(column) ?? 0, row));
    reach.lastColumn = Math.max(reach.lastColumn, column);
  }

  /** How far a sheet's contents have ever reached. */
  function endsOf(sheet: ReadSheet): Ends {
    const known = ends.get(sheet);
    if (known) return known;
    const found: Ends = { rows: new Map(), lastColumn: 0 };
    for (const { row, cells } of sheet.rows) {
      for (const { column, value } of cells) {
        if (value === null) continue;
        found.rows.set(column, row);
        found.lastColumn = Math.max(found.lastColumn, column);
      }
    }
    ends.set(sheet, found);
    return found;
  }

  return {
    at,
    put(sheet, { startRow, startColumn }, values) {
      values.forEach((ofRow, down) =>
        ofRow.forEach((value, right) => set(sheet, startRow + down, startColumn + right, value)),
      );
    },
    clear(sheet, area, but) {
      if (covers(but, area)) return;
      for (const { row, column } of cellsOf(area)) {
        if (!contains(but, row, column)) set(sheet, row, column, null);
      }
    },
    *changed() {
      for (const [sheet, columns] of over) {
        for (const [column, values] of columns) {
          for (const row of Object.keys(values)) {
            yield { sheet, row: Number(row), column, value: values[Number(row)]! };
          }
        }
      }
    },
    last(sheet, { startRow, startColumn, endRow, endColumn }, side) {
      const byRow = side === "row";
      const { rows, lastColumn } = endsOf(sheet);
      const [first, most] = byRow ? [startColumn, endColumn] : [startRow, endRow];
      let last = byRow ? 0 : lastColumn;
      for (let line = first; byRow && line <= most; line++) {
        last = Math.max(last, rows.get(line) ?? 0);
      }
      const holds = (place: number) => {
        for (let line = first; line <= most; line++) {
          const value = byRow ? at(sheet, place, line) : at(sheet, line, place);
          if (value !== null) return true;
        }
        return false;
      };
      while (last > 0 && !holds(last)) last--;
      return last;
    },
  };
}

/** The last row of each column, and the last column, that has held anything. */
interface Ends {
  readonly rows: Map<number, number>;
  lastColumn: number;
}
