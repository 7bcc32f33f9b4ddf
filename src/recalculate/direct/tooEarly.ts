import type { FormulaCell } from "../book";
import { indexAreas } from "../reach/areaIndex";
import type { SheetArea } from "../reach/reads";
import type { DirectFormula } from "./expression";

/** Cells that a result came to fill or to leave. */
export interface Change extends SheetArea {
  /** How many results there were then, that one included. */
  readonly after: number;
}

/** Of formulas in the order in which they were worked out, those that read cells which only then changed. */
export function readersBefore(
  changes: readonly Change[],
  order: readonly FormulaCell[],
  formulas: ReadonlyMap<FormulaCell, DirectFormula>,
): ReadonlySet<FormulaCell> {
  if (changes.length === 0) return new Set();
  const index = indexAreas(changes, (change) => change);
  return new Set(
    order.filter((cell, at) =>
      formulas
        .get(cell)!
        .reads.some(
          ({ sheet, area }) =>
            sheet !== undefined && index.in(sheet, area).some(({ after }) => after > at),
        ),
    ),
  );
}
