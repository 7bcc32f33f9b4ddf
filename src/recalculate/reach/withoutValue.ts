import { cellAddress, quoteSheet } from "../../formula/address";
import type { FormulaCell } from "../book";
import type { Fills } from "./fills";
import type { Reads } from "./reads";

/** The formulas without a saved value that these read from, by themselves or through others. */
export function unsavedBehind(
  formulas: Iterable<FormulaCell>,
  unsaved: Fills,
  readsOf: (cell: FormulaCell) => Reads,
): Set<FormulaCell> {
  const found = new Set<FormulaCell>();
  const waiting = [...formulas];
  for (let cell = waiting.pop(); cell; cell = waiting.pop()) {
    for (const { sheet, area } of readsOf(cell).areas) {
      for (const other of unsaved.in(sheet, area)) {
        if (found.has(other)) continue;
        found.add(other);
        waiting.push(other);
      }
    }
  }
  return found;
}

/**
 * Leaves, of the formulas to be computed, those that read from one which is left and has no saved value:
 * whatever came of them would be made up.
 */
export function leaveReadersOf(
  formulas: Iterable<FormulaCell>,
  left: Map<FormulaCell, string>,
  fillsOf: (cells: Iterable<FormulaCell>) => Fills,
  readsOf: (cell: FormulaCell) => Reads,
): void {
  for (let before = -1; before !== left.size;) {
    before = left.size;
    const unsaved = [...left.keys()].filter(({ saved }) => saved === null);
    if (unsaved.length === 0) return;
    const empty = fillsOf(unsaved);
    for (const cell of formulas) {
      if (left.has(cell)) continue;
      for (const { sheet, area } of readsOf(cell).areas) {
        const [other] = empty.in(sheet, area);
        if (other) left.set(cell, `it reads ${placeOf(other)}, which has no value`);
      }
    }
  }
}

const placeOf = ({ sheet, row, column }: FormulaCell) =>
  `${quoteSheet(sheet.name)}!${cellAddress(row, column)}`;
