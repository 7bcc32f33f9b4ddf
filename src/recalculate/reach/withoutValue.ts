import { cellAddress, quoteSheet } from "../../formula/address";
import type { FormulaCell } from "../book";
import type { Fills } from "./fills";
import { indexReaders } from "./readers";
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
      for (const other of unsaved.take(sheet, area)) {
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
  formulas: readonly FormulaCell[],
  left: Map<FormulaCell, string>,
  readsOf: (cell: FormulaCell) => Reads,
): void {
  const waiting = [...left.keys()].filter(({ saved }) => saved === null);
  if (waiting.length === 0) return;
  const named = formulas.map((cell) => [cell, { ...readsOf(cell), anywhere: false }] as const);
  const readers = indexReaders(named);
  for (let other = waiting.pop(); other; other = waiting.pop()) {
    for (const cell of readers.take({ sheet: other.sheet.name, area: other.area })) {
      if (left.has(cell)) continue;
      left.set(cell, `it reads ${placeOf(other)}, which has no value`);
      if (cell.saved === null) waiting.push(cell);
    }
  }
}

const placeOf = ({ sheet, row, column }: FormulaCell) =>
  `${quoteSheet(sheet.name)}!${cellAddress(row, column)}`;
