import { cellsOf } from "../formula/address";
import type { CellValue } from "../xlsx/model";
import type { FormulaCell } from "./book";
import { holdResult, type GrowingHolds } from "./holds";
import type { Computed } from "./inEngine";
import { circlesBehind, IN_A_CIRCLE } from "./reach/circles";
import type { Fills } from "./reach/fills";
import { indexFills } from "./reach/fills";
import type { Reads } from "./reach/reads";
import { ownValue, type Result } from "./result";

/** What the engine makes of formulas while all they read is as it was saved. */
export type Compute = (formulas: readonly FormulaCell[], holds: GrowingHolds) => Promise<Computed>;

/** What the saved values say of the formulas that were weighed. */
export interface Evidence {
  /** The formulas whose saved value the engine does not reproduce, and what it comes to. */
  readonly against: ReadonlyMap<FormulaCell, string>;
  /** What it comes to for the others. */
  readonly reproduced: ReadonlyMap<FormulaCell, Result>;
}

/** Beyond these, formulas that read from others that failed are taken to fail themselves. */
const MOST_PASSES = 4;

/**
 * Weighs formulas by their saved values: given what was saved in the cells they read, the engine must
 * come to what was saved for them. One that reads from another that does not is weighed again on the
 * other's saved value.
 */
export async function weigh(
  formulas: readonly FormulaCell[],
  readsOf: (cell: FormulaCell) => Reads,
  compute: Compute,
): Promise<Evidence> {
  const against = new Map<FormulaCell, string>();
  const holds: GrowingHolds = { cut: new Set(), beyond: new Map() };
  for (let pass = 1; ; pass++) {
    const weighed = formulas.filter((cell) => !against.has(cell));
    const { results, hasCircle } = await compute(weighed, holds);
    const circles = hasCircle ? circlesBehind(weighed, readsOf) : [];
    for (const cell of circles) against.set(cell, IN_A_CIRCLE);
    if (weighed.some((cell) => against.has(cell))) continue;
    const failed = new Map<FormulaCell, string>();
    let held = false;
    for (const [cell, result] of results) {
      const hold = holdResult(cell, result, false, holds);
      if (hold === "held") held = true;
      else if (hold !== undefined) failed.set(cell, hold);
      else if (!reproduces(cell, result)) failed.set(cell, differenceOf(cell, result));
    }
    if (failed.size === 0 && !held) return { against, reproduced: results };
    const last = pass >= MOST_PASSES;
    if (last && failed.size === 0) return { against, reproduced: results };
    const fills = indexFills(failed.keys());
    for (const [cell, reason] of failed) {
      if (last || !readsFrom(cell, fills, readsOf)) against.set(cell, reason);
    }
  }
}

function readsFrom(cell: FormulaCell, fills: Fills, readsOf: (cell: FormulaCell) => Reads) {
  return readsOf(cell).areas.some(
    ({ sheet, area }) => fills.first(sheet, area, cell) !== undefined,
  );
}

function reproduces({ sheet, area, saved, row, column }: FormulaCell, result: Result): boolean {
  for (const place of cellsOf(area)) {
    const own = place.row === row && place.column === column;
    const before = own ? saved : (sheet.cellAt(place.row, place.column)?.value ?? null);
    const now = result.values[place.row - area.startRow]?.[place.column - area.startColumn] ?? null;
    if (!agree(before, now)) return false;
  }
  return result.area.endRow === area.endRow && result.area.endColumn === area.endColumn;
}

/** Programs round the last digits of a sum each in its own way. */
const TOLERANCE = 1e-9;

function agree(one: CellValue, other: CellValue): boolean {
  if (typeof one !== "number" || typeof other !== "number") return one === other;
  return Math.abs(one - other) <= TOLERANCE * Math.max(1, Math.abs(one), Math.abs(other));
}

function differenceOf({ saved }: FormulaCell, result: Result): string {
  const now = ownValue(result);
  return agree(saved, now)
    ? "from what was saved the engine comes to other cells beside it"
    : `from what was saved the engine comes to ${written(now)}, and not to ${written(saved)}`;
}

const written = (value: CellValue) =>
  typeof value === "string" && !value.startsWith("#") ? `"${value}"` : String(value ?? "nothing");
