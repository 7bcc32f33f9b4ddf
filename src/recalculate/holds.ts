import { cellAddress, cellsOf } from "../formula/address";
import type { CellValue } from "../xlsx/model";
import type { FormulaCell } from "./book";
import type { Holds } from "./inEngine";
import { ownValue, valueIn, type Result } from "./result";

/** Holds that grow as passes of the engine show where they are needed. */
export interface GrowingHolds extends Holds {
  readonly cut: Set<FormulaCell>;
  readonly beyond: Map<FormulaCell, ReadonlyMap<string, CellValue>>;
}

/** Why a formula's result cannot be taken for Excel's. */
export const TAKES_ONE_CELL = "it takes one cell of a range, by where it stands";

/**
 * Adds the holds that a result shows to be needed, and says whether it was any; or says why the result
 * of an ordinary formula cannot be taken.
 */
export function holdResult(
  cell: FormulaCell,
  result: Result,
  ours: boolean,
  { cut, beyond }: GrowingHolds,
): "held" | typeof TAKES_ONE_CELL | undefined {
  const { natural, area } = result;
  const tooLarge =
    ownValue(result) === "#SPILL!" ||
    natural.endRow > cell.area.endRow ||
    natural.endColumn > cell.area.endColumn;
  if (cell.kind !== "spilling" && tooLarge && !cut.has(cell)) {
    if (!ours && cell.kind !== "fixed array") return TAKES_ONE_CELL;
    cut.add(cell);
    return "held";
  }
  if (cell.kind !== "fixed array" || beyond.has(cell)) return undefined;
  const padding = new Map<string, CellValue>();
  for (const { row, column } of cellsOf(area)) {
    if (row <= natural.endRow && column <= natural.endColumn) continue;
    padding.set(cellAddress(row, column), valueIn(result, row, column));
  }
  if (padding.size === 0) return undefined;
  beyond.set(cell, padding);
  return "held";
}
