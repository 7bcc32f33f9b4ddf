import type { OnProgress } from "../engine/headless";
import type { Area } from "../formula/address";
import type { CellValue } from "../xlsx/model";
import type { Book, FormulaCell } from "./book";
import { workOut } from "./direct/workOut";
import { holdResult, type GrowingHolds } from "./holds";
import { computeInEngine, type Functions } from "./inEngine";
import { findNeed } from "./need";
import { extentChanges } from "./reach/extent";
import { indexFills } from "./reach/fills";
import { sameResult, type Failure, type Result } from "./result";
import { createSelection, type Moved, type Selection } from "./selection";
import { valuesOf } from "./values";

/** What came of a formula. */
export interface Outcome {
  readonly cell: FormulaCell;
  /** Whether it calls one of our functions, by itself or by a name. */
  readonly ours: boolean;
  /** The cells it fills now. */
  readonly area: Area;
  /** What stands in them, row by row; for a formula that was left, its saved value alone. */
  readonly values: readonly (readonly CellValue[])[];
  /** Why it was left as it was saved, if it was. */
  readonly left?: string;
  /** The errors it shows, if it is ours, each with what our function says about it. */
  readonly failures: readonly Failure[];
}

/** Computing one formula can bring another to light, but never many times over. */
const MOST_PASSES = 12;

/**
 * Works out the formulas that use our functions and those that read from them. Every other formula keeps
 * its value, but for those that ours read and that were saved without one.
 *
 * Two things are held against a formula, which then keeps its value as well: that the engine cannot work
 * it out as Excel would, and, of an ordinary one, that from the values it was saved with the engine does
 * not come to the value that was saved.
 */
export async function calculate(
  book: Book,
  functions: Functions,
  onProgress?: OnProgress,
): Promise<Outcome[]> {
  const isOurs = findNeed(book);
  const ours = book.formulas.filter(isOurs);
  if (ours.length === 0) return [];
  const selection = await createSelection(book, ours, functions, onProgress);
  const holds: GrowingHolds = { cut: new Set(), beyond: new Map() };
  for (let pass = 1; ; pass++) {
    const live = selection.live();
    const values = valuesOf(book.sheets);
    const { results, tooEarly } = await workOut(
      book,
      selection.direct(),
      indexFills(live),
      values,
      functions.implementations,
      (done) => onProgress?.(done, live.length),
    );
    const rest = live.filter((cell) => !results.has(cell));
    const { results: engine, hasCircle } = await computeInEngine(
      book,
      rest,
      holds,
      values.changed(),
      isOurs,
      functions,
      onProgress,
    );
    if (hasCircle && selection.leaveCircles(rest)) continue;
    for (const [cell, result] of engine) results.set(cell, result);

    selection.leaveToEngine(tooEarly);
    let again = tooEarly.size > 0;
    for (const [cell, result] of engine) {
      const hold = holdResult(cell, result, isOurs(cell), holds);
      if (hold !== undefined) again = true;
      if (hold !== undefined && hold !== "held") selection.leave(cell, hold);
    }
    if (await selection.admit(extentsChanged(results))) again = true;
    if (selection.leaveReadersToEngine(extentsChanged(engine))) again = true;
    if (!again || pass === MOST_PASSES) return outcomesOf(book, selection, results, isOurs);
  }
}

/** The cells that results have come to fill, or to leave. */
function extentsChanged(results: ReadonlyMap<FormulaCell, Result>): Moved[] {
  return [...results].flatMap(([by, { area: after }]) =>
    extentChanges(by.area, after).map((area) => ({ sheet: by.sheet.name, area, by })),
  );
}

/** What came of the formulas, in the order in which they stand in the file. */
function outcomesOf(
  { formulas }: Book,
  selection: Selection,
  results: ReadonlyMap<FormulaCell, Result>,
  isOurs: (cell: FormulaCell) => boolean,
): Outcome[] {
  const outcomes = new Map<FormulaCell, Outcome>();
  const changed: FormulaCell[] = [];
  for (const [cell, result] of results) {
    const before = selection.reproduced(cell);
    // What comes to the same as before anything of ours changed has not changed with it.
    if (before && sameResult(before, result)) continue;
    const { area, values, failures } = result;
    outcomes.set(cell, { cell, ours: isOurs(cell), area, values, failures });
    changed.push(cell);
  }
  for (const [cell, left] of selection.stale(changed, results)) {
    const { area, saved } = cell;
    const kept = { area, values: [[saved]], left, failures: [] };
    outcomes.set(cell, { cell, ours: isOurs(cell), ...kept });
  }
  return formulas.flatMap((cell) => outcomes.get(cell) ?? []);
}
