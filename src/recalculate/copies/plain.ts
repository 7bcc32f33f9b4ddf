import { areaAddress, cellAddress } from "../../formula/address";
import { fromFile } from "../../formula/future";
import type { Package } from "../../xlsx/package";
import { filledBy, pruneCalcChain } from "../../xlsx/patch/calcChain";
import type { CellChange } from "../../xlsx/patch/patchSheet";
import type { ReadSheet } from "../../xlsx/read/sheet";
import type { Book, FormulaCell } from "../book";
import type { Outcome } from "../calculate";
import { findNeed } from "../need";
import { ownValue } from "../result";
import { changesOf, withChanges } from "../saveValues";
import { addNotes } from "./notes";

/**
 * What becomes of a formula in a copy: another formula as the file keeps one, nothing but its value
 * (`null`), or itself (`undefined`).
 */
export type Rewrite = (cell: FormulaCell) => string | null | undefined;

/** A copy with values in place of the formulas that use our functions, each formula in a note. */
export function plainCopy(book: Book, outcomes: readonly Outcome[]): Package {
  const needsOurs = findNeed(book);
  return copyWith(book, outcomes, (cell) => (needsOurs(cell) ? null : undefined));
}

/** A copy of the workbook with its values worked out and its formulas rewritten. */
export function copyWith(book: Book, outcomes: readonly Outcome[], rewrite: Rewrite): Package {
  const changes = changesOf(outcomes);
  const all = withUntouched(book, outcomes);
  const notes = new Map<ReadSheet, Map<string, string>>();
  const removed = new Map<string, Outcome>();
  for (const outcome of all) {
    const { cell } = outcome;
    const formula = rewrite(cell);
    if (formula === undefined) continue;
    change(cell, { value: ownValue(outcome), formula });
    if (formula !== null) continue;
    const address = cellAddress(cell.row, cell.column);
    removed.set(`${cell.sheet.name.toLowerCase()}!${address}`, outcome);
    const ofSheet = notes.get(cell.sheet) ?? new Map<string, string>();
    notes.set(cell.sheet, ofSheet.set(address, `=${fromFile(cell.text)}`));
  }
  for (const outcome of all) {
    const { cell } = outcome;
    if (rewrite(cell) !== undefined) continue;
    const formula = withoutSpillsOf(cell, removed);
    if (formula !== cell.text) change(cell, { value: ownValue(outcome), formula });
  }
  unshare();

  let file = withChanges(book.file, changes);
  for (const [sheet, ofSheet] of notes) file = addNotes(file, sheet.path, ofSheet);
  if (removed.size === 0) return file;
  const kept = all
    .filter(({ cell }) => rewrite(cell) !== null)
    .map(({ cell, area }) => ({ sheetId: cell.sheet.number, area }));
  return pruneCalcChain(file, book.path, filledBy(kept));

  /** Where one of the cells that share a formula changes, each of the others gets its own. */
  function unshare(): void {
    const groupOf = ({ sheet, row, column }: FormulaCell) => {
      const group = sheet.cellAt(row, column)?.formula?.group;
      return group === undefined ? undefined : `${sheet.position} ${group}`;
    };
    const isRewritten = ({ sheet, row, column }: FormulaCell) =>
      changes.get(sheet)?.get(row)?.get(column)?.formula !== undefined;
    const opened = new Set(book.formulas.filter(isRewritten).map(groupOf));
    opened.delete(undefined);
    for (const outcome of all) {
      const { cell } = outcome;
      if (!opened.has(groupOf(cell)) || isRewritten(cell)) continue;
      change(cell, { value: ownValue(outcome), formula: cell.text });
    }
  }

  function change(cell: FormulaCell, to: CellChange): void {
    const rows = changes.get(cell.sheet) ?? new Map<number, Map<number, CellChange>>();
    const cells = rows.get(cell.row) ?? new Map<number, CellChange>();
    changes.set(cell.sheet, rows.set(cell.row, cells));
    cells.set(cell.column, { ...cells.get(cell.column), ...to });
  }
}

/** The outcomes of all formulas: those that were not computed are as they were saved. */
function withUntouched(book: Book, outcomes: readonly Outcome[]): Outcome[] {
  const known = new Map(outcomes.map((outcome) => [outcome.cell, outcome]));
  return book.formulas.map((cell): Outcome => {
    const untouched = { cell, ours: false, area: cell.area, values: [[cell.saved]], failures: [] };
    return known.get(cell) ?? untouched;
  });
}

const SPILL_REFERENCE =
  /_xlfn\.ANCHORARRAY\(((?:'((?:[^']|'')*)'!|([\p{L}\p{N}_.]+)!)?(\$?[A-Z]+\$?\d+))\)/giu;

/** A formula that reads all that spilled from a cell reads that range once nothing spills there. */
function withoutSpillsOf({ text, sheet }: FormulaCell, removed: ReadonlyMap<string, Outcome>) {
  return text.replace(
    SPILL_REFERENCE,
    (all, _reference, quoted?: string, plain?: string, cell = "") => {
      const name = quoted?.replaceAll("''", "'") ?? plain ?? sheet.name;
      const outcome = removed.get(
        `${name.toLowerCase()}!${cell.replaceAll("$", "").toUpperCase()}`,
      );
      if (!outcome) return all;
      const before = quoted !== undefined ? `'${quoted}'!` : plain !== undefined ? `${plain}!` : "";
      const range = areaAddress(outcome.area).replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");
      return before + range;
    },
  );
}
