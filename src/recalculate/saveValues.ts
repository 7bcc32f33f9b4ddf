import { cellAddress, type Area } from "../formula/address";
import type { Package } from "../xlsx/package";
import type { Book, BookSheet, CellValue } from "./book";
import { formulaCells, pruneCalcChain } from "../xlsx/patch/calcChain";
import type { Outcome } from "./calculate";
import { cellsOf } from "./cells";
import { withText } from "../xlsx/patch/editPackage";
import { patchSheet, type CellChange } from "../xlsx/patch/patchSheet";

/**
 * The workbook's file with what its formulas came to. Where a value is what the file holds already,
 * nothing is touched, and nothing is touched but values and the extent of what spilled.
 */
export function saveValues(book: Book, outcomes: readonly Outcome[]): Package {
  let file = book.file;
  for (const [sheet, changes] of changesOf(book, outcomes)) {
    if (changes.size === 0) continue;
    file = withText(file, sheet.path, patchSheet(sheet.content, changes));
  }
  const shrunk = outcomes.some(({ cell, area }) => !covers(area, cell.area));
  return shrunk ? pruneCalcChain(file, book, formulasAfter(book, outcomes)) : file;
}

export type BookChanges = Map<BookSheet, Map<number, Map<number, CellChange>>>;

/** The cells whose values differ from what the file holds. */
export function changesOf(book: Book, outcomes: readonly Outcome[]): BookChanges {
  const changes: BookChanges = new Map();
  const change = (sheet: BookSheet, row: number, column: number, to: CellChange | undefined) => {
    const rows = changes.get(sheet) ?? new Map<number, Map<number, CellChange>>();
    const cells = rows.get(row) ?? new Map<number, CellChange>();
    changes.set(sheet, rows.set(row, cells));
    if (to) cells.set(column, to);
    else cells.delete(column);
    if (cells.size === 0) rows.delete(row);
  };
  const held = (sheet: BookSheet, row: number, column: number) => {
    const cell = sheet.cells.get(cellAddress(row, column));
    return cell ? book.valueOf(cell) : null;
  };
  const calculated = outcomes.filter(({ left }) => left === undefined);

  // What spilled before is taken away first: another result may reach there now.
  for (const { cell, area } of calculated) {
    if (covers(area, cell.area)) continue;
    for (const { row, column } of cellsOf(cell.area)) {
      const there = cell.sheet.cells.get(cellAddress(row, column));
      if (there && !there.formula) change(cell.sheet, row, column, { value: null });
    }
  }
  for (const { cell, area, values } of calculated) {
    const grown = cell.kind === "spilling" && !(covers(area, cell.area) && covers(cell.area, area));
    for (const { row, column } of cellsOf(area)) {
      const value = values[row - area.startRow][column - area.startColumn];
      const own = row === cell.row && column === cell.column;
      const same = sameValue(value, held(cell.sheet, row, column)) && !(own && grown);
      change(cell.sheet, row, column, same ? undefined : { value, ...(own && grown && { area }) });
    }
  }
  return changes;
}

/** The 15 digits that a spreadsheet shows of a number; some programs save 17. */
const RELATIVE = 1e-14;

function sameValue(one: CellValue, other: CellValue): boolean {
  if (typeof one !== "number" || typeof other !== "number") return one === other;
  return Math.abs(one - other) <= RELATIVE * Math.max(Math.abs(one), Math.abs(other));
}

function covers(outer: Area, inner: Area): boolean {
  return (
    outer.startRow <= inner.startRow &&
    outer.startColumn <= inner.startColumn &&
    outer.endRow >= inner.endRow &&
    outer.endColumn >= inner.endColumn
  );
}

function formulasAfter(book: Book, outcomes: readonly Outcome[]) {
  const areas = new Map(outcomes.map(({ cell, area }) => [cell, area]));
  const formulas = book.formulas.map((cell) => ({ ...cell, area: areas.get(cell) ?? cell.area }));
  return formulaCells({ ...book, formulas });
}
