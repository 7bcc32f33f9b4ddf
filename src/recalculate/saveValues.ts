import { cellsOf, covers } from "../formula/address";
import { textAt, type Package } from "../xlsx/package";
import { filledBy, pruneCalcChain } from "../xlsx/patch/calcChain";
import { withText } from "../xlsx/patch/editPackage";
import { patchSheet, type CellChange } from "../xlsx/patch/patchSheet";
import type { ReadSheet } from "../xlsx/read/sheet";
import type { Book } from "./book";
import type { Outcome } from "./calculate";
import { sameValue, valueIn } from "./result";
import type { ChangedCell } from "./values";

/**
 * The workbook's file with what its formulas came to. Where a value is what the file holds already,
 * nothing is touched, and nothing is touched but values and the extent of what spilled.
 */
export function saveValues(
  book: Book,
  outcomes: readonly Outcome[],
  changes: BookChanges = changesOf(outcomes),
): Package {
  const file = withChanges(book.file, changes);
  const shrunk = outcomes.some(({ cell, area }) => !covers(area, cell.area));
  if (!shrunk) return file;
  const areas = new Map(outcomes.map(({ cell, area }) => [cell, area]));
  const filled = book.formulas.map((cell) => {
    return { sheetId: cell.sheet.number, area: areas.get(cell) ?? cell.area };
  });
  return pruneCalcChain(file, book.path, filledBy(filled));
}

/** The file with its sheets changed in place. */
export function withChanges(file: Package, changes: BookChanges): Package {
  let changed = file;
  for (const [sheet, ofSheet] of changes) {
    if (ofSheet.size === 0) continue;
    const { path } = sheet;
    changed = withText(changed, path, patchSheet(textAt(file, path), sheet, ofSheet));
  }
  return changed;
}

export function changedCells(changes: BookChanges): ChangedCell[] {
  const cells: ChangedCell[] = [];
  for (const [sheet, rows] of changes) {
    for (const [row, ofRow] of rows) {
      for (const [column, { value }] of ofRow) cells.push({ sheet, row, column, value });
    }
  }
  return cells;
}

export type BookChanges = Map<ReadSheet, Map<number, Map<number, CellChange>>>;

/** The cells whose values differ from what the file holds. */
export function changesOf(outcomes: readonly Outcome[]): BookChanges {
  const changes: BookChanges = new Map();
  const change = (sheet: ReadSheet, row: number, column: number, to: CellChange | undefined) => {
    let rows = changes.get(sheet);
    if (!rows) changes.set(sheet, (rows = new Map<number, Map<number, CellChange>>()));
    const cells = rows.get(row);
    if (to && cells) cells.set(column, to);
    else if (to) rows.set(row, new Map([[column, to]]));
    else if (cells?.delete(column) && cells.size === 0) rows.delete(row);
  };
  const held = (sheet: ReadSheet, row: number, column: number) =>
    sheet.cellAt(row, column)?.value ?? null;
  const calculated = outcomes.filter(({ left }) => left === undefined);

  // What spilled before is taken away first: another result may reach there now.
  for (const { cell, area } of calculated) {
    if (covers(area, cell.area)) continue;
    for (const { row, column } of cellsOf(cell.area)) {
      const there = cell.sheet.cellAt(row, column);
      if (there && !there.formula) change(cell.sheet, row, column, { value: null });
    }
  }
  for (const outcome of calculated) {
    const { cell, area } = outcome;
    const grown = cell.kind === "spilling" && !(covers(area, cell.area) && covers(cell.area, area));
    for (const { row, column } of cellsOf(area)) {
      const value = valueIn(outcome, row, column);
      const own = row === cell.row && column === cell.column;
      const same = sameValue(value, held(cell.sheet, row, column)) && !(own && grown);
      change(cell.sheet, row, column, same ? undefined : { value, ...(own && grown && { area }) });
    }
  }
  return changes;
}
