import { cellsOf, covers } from "../formula/address";
import { textAt, type Package } from "../xlsx/package";
import { filledBy, pruneCalcChain } from "../xlsx/patch/calcChain";
import { withText } from "../xlsx/patch/editPackage";
import { createChanges, type CellChange, type SheetChanges } from "../xlsx/patch/changes";
import { patchSheet } from "../xlsx/patch/patchSheet";
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
  changes: BookChanges,
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
    if (ofSheet.count() === 0) continue;
    const { path } = sheet;
    changed = withText(changed, path, patchSheet(textAt(file, path), sheet, ofSheet));
  }
  return changed;
}

/** Every cell that holds something else now than in the file, sheet by sheet and row by row. */
export function* changedCells(changes: BookChanges): Generator<ChangedCell> {
  for (const [sheet, ofSheet] of changes) {
    for (const [row, cells] of ofSheet.rows()) {
      for (const { column, value } of cells) yield { sheet, row, column, value };
    }
  }
}

export function countChanges(changes: BookChanges): number {
  let count = 0;
  for (const ofSheet of changes.values()) count += ofSheet.count();
  return count;
}

export type BookChanges = Map<ReadSheet, SheetChanges>;

/** The changes to a sheet, which begin here where there are none yet. */
export function changesIn(changes: BookChanges, sheet: ReadSheet): SheetChanges {
  const ofSheet = changes.get(sheet) ?? createChanges();
  changes.set(sheet, ofSheet);
  return ofSheet;
}

/** The cells whose values differ from what the file holds. */
export function changesOf(outcomes: readonly Outcome[]): BookChanges {
  const changes: BookChanges = new Map();
  const change = (sheet: ReadSheet, row: number, column: number, to: CellChange | undefined) =>
    changesIn(changes, sheet).put(row, column, to);
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
