import { areaAddress, cellAddress, SHEET_SOURCE, sheetIn } from "../../formula/address";
import type { Package } from "../../xlsx/package";
import { filledBy, pruneCalcChain } from "../../xlsx/patch/calcChain";
import type { CellChange } from "../../xlsx/patch/changes";
import { addNotes } from "../../xlsx/patch/notes";
import type { ReadSheet } from "../../xlsx/read/sheet";
import type { Book, FormulaCell } from "../book";
import type { Outcome } from "../calculate";
import { ownValue } from "../result";
import { changesIn, changesOf, withChanges } from "../saveValues";
import type { Judge } from "./judge";
import { editNames } from "./outside/names";
import type { Outside, OutsideFormula } from "./outside/place";
import { editRules } from "./outside/rules";
import { editTables } from "./outside/tables";
import { notesOn } from "./runs";

/** A copy of a workbook, and what became in it of everything that needs the add-in. */
export interface Copy {
  readonly file: Package;
  /** The cells that go on calculating. */
  readonly live: readonly CopiedCell[];
  /** The cells that are values now. */
  readonly frozen: readonly FrozenCell[];
  /** The cells that still ask for the add-in, as they keep an old value. */
  readonly kept: readonly CopiedCell[];
  readonly outside: readonly OutsideFormula[];
  /** The functions of the copy that it calls. */
  readonly calls: ReadonlySet<string>;
}

export interface CopiedCell {
  readonly cell: FormulaCell;
  /** The functions of ours that its formula calls, by itself or by names. */
  readonly functions: readonly string[];
  /** Its formula in the copy, as the file keeps it. */
  readonly text: string;
}

export interface FrozenCell extends Omit<CopiedCell, "text"> {
  readonly reason: string;
}

/**
 * A copy of the workbook with its values worked out and its formulas as they are judged: rewritten, or nothing
 * but a value, with the formula in a note. A formula that was left with an old value is never made a value: that
 * would be wrong and not look it.
 */
export function copyWith(book: Book, outcomes: readonly Outcome[], judge: Judge): Copy {
  const changes = changesOf(outcomes);
  const all = withUntouched(book, outcomes);
  const sorted = sortOut(all, judge);
  const { live, frozen, kept, calls } = sorted;
  const removed = new Map(
    sorted.removed.map((outcome) => {
      const { sheet, row, column } = outcome.cell;
      return [`${sheet.name.toLowerCase()}!${cellAddress(row, column)}`, outcome];
    }),
  );
  const texts = new Map(live.map(({ cell, text }) => [cell, text]));
  const gone = new Set(frozen.map(({ cell }) => cell));
  const rewritten = new Map<FormulaCell, CellChange>();
  for (const outcome of all) {
    const { cell } = outcome;
    if (gone.has(cell)) rewritten.set(cell, { value: ownValue(outcome), formula: null });
    else {
      const formula = withoutSpillsOf(texts.get(cell) ?? cell.text, cell, removed);
      if (formula !== cell.text) rewritten.set(cell, { value: ownValue(outcome), formula });
    }
  }
  unshare();
  // What a result that spills came to fill is to be said of its new formula as well.
  for (const [cell, to] of rewritten) {
    const area = changes.get(cell.sheet)?.at(cell.row, cell.column)?.area;
    if (area) rewritten.set(cell, { ...to, area });
  }
  for (const [{ sheet, row, column }, to] of rewritten) {
    changesIn(changes, sheet).put(row, column, to);
  }

  let file = withChanges(book.file, changes);
  for (const [sheet, cells] of bySheet([...gone]))
    file = addNotes(file, sheet.path, notesOn(cells));
  const needed = new Set(kept.flatMap(({ text }) => [...judge.namesIn(text)]));
  const outside: Outside = { judge, isKept: (name) => needed.has(name), found: [], calls };
  file = editNames(file, book.path, outside);
  for (const sheet of book.sheets) {
    file = editTables(file, sheet, outside);
    file = editRules(file, sheet, outside);
  }
  if (gone.size > 0) {
    const filled = all
      .filter(({ cell }) => !gone.has(cell))
      .map(({ cell, area }) => ({ sheetId: cell.sheet.number, area }));
    file = pruneCalcChain(file, book.path, filledBy(filled));
  }
  return { file, live, frozen, kept, outside: outside.found, calls };

  /** Where one of the cells that share a formula changes, each of the others gets its own. */
  function unshare(): void {
    const groupOf = ({ sheet, row, column }: FormulaCell) => {
      const group = sheet.cellAt(row, column)?.formula?.group;
      return group === undefined ? undefined : `${sheet.position} ${group}`;
    };
    const opened = new Set([...rewritten.keys()].map(groupOf));
    opened.delete(undefined);
    for (const outcome of all) {
      const { cell } = outcome;
      if (!opened.has(groupOf(cell)) || rewritten.has(cell)) continue;
      rewritten.set(cell, { value: ownValue(outcome), formula: cell.text });
    }
  }
}

/** The cells that need the add-in, by what becomes of them. */
function sortOut(outcomes: readonly Outcome[], judge: Judge) {
  const live: CopiedCell[] = [];
  const frozen: FrozenCell[] = [];
  const kept: CopiedCell[] = [];
  const removed: Outcome[] = [];
  const calls = new Set<string>();
  for (const outcome of outcomes) {
    const { cell, left } = outcome;
    const verdict = judge.verdictOn(cell.text);
    if (!verdict) continue;
    const functions = judge.functionsIn(cell.text);
    if ("text" in verdict) {
      live.push({ cell, functions, text: verdict.text });
      for (const call of verdict.calls) calls.add(call);
    } else if (left !== undefined) kept.push({ cell, functions, text: cell.text });
    else {
      frozen.push({ cell, functions, reason: verdict.lost });
      removed.push(outcome);
    }
  }
  return { live, frozen, kept, removed, calls };
}

function bySheet(cells: readonly FormulaCell[]): Map<ReadSheet, FormulaCell[]> {
  const sheets = new Map<ReadSheet, FormulaCell[]>();
  for (const cell of cells) {
    const ofSheet = sheets.get(cell.sheet) ?? [];
    sheets.set(cell.sheet, ofSheet);
    ofSheet.push(cell);
  }
  return sheets;
}

/** The outcomes of all formulas: those that were not computed are as they were saved. */
function withUntouched(book: Book, outcomes: readonly Outcome[]): Outcome[] {
  const known = new Map(outcomes.map((outcome) => [outcome.cell, outcome]));
  return book.formulas.map((cell): Outcome => {
    const untouched = { cell, ours: false, area: cell.area, values: [[cell.saved]], failures: [] };
    return known.get(cell) ?? untouched;
  });
}

const SPILL_REFERENCE = new RegExp(
  String.raw`_xlfn\.ANCHORARRAY\((${SHEET_SOURCE})?(\$?[A-Z]+\$?\d+)\)`,
  "giu",
);

/** A formula that reads all that spilled from a cell reads that range once nothing spills there. */
function withoutSpillsOf(
  text: string,
  { sheet }: FormulaCell,
  removed: ReadonlyMap<string, Outcome>,
): string {
  if (removed.size === 0) return text;
  return text.replace(SPILL_REFERENCE, (all, before = "", cell = "") => {
    const name = before === "" ? sheet.name : sheetIn(before);
    const outcome = removed.get(`${name.toLowerCase()}!${cell.replaceAll("$", "").toUpperCase()}`);
    if (!outcome) return all;
    return before + areaAddress(outcome.area).replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");
  });
}
