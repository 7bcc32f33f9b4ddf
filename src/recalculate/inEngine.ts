import type { HeadlessWorkbook, OnProgress } from "../engine/headless";
import { openCalculation } from "../engine/headless";
import type { FunctionsMetadata } from "../engine/metadata";
import { cellAddress, type Area } from "../formula/address";
import type { Implementations } from "../functions/implementations";
import type { CellValue } from "../xlsx/model";
import type { Book, FormulaCell } from "./book";
import { engineFormula } from "./engineFormula";
import type { Result } from "./result";
import { placeResult } from "./result";
import type { ChangedCell } from "./values";

/** What formulas are computed with. */
export interface Functions {
  readonly metadata: FunctionsMetadata;
  readonly implementations: Implementations;
}

/** How the engine is to hold results to the cells that the file gives them. */
export interface Holds {
  /** Formulas whose result is to be cut to the cells they fill. */
  readonly cut: ReadonlySet<FormulaCell>;
  /** What stands in those cells of an array, by address, that its result does not reach. */
  readonly beyond: ReadonlyMap<FormulaCell, ReadonlyMap<string, CellValue>>;
}

export interface Computed {
  readonly results: ReadonlyMap<FormulaCell, Result>;
  /** Whether some of them read their own results, whose values are then of no worth. */
  readonly hasCircle: boolean;
}

/**
 * Has the engine compute these formulas, and no others: all other cells hold what the file has or what
 * is said of them here. Of ours it also tells the errors they show.
 */
export async function computeInEngine(
  book: Book,
  formulas: readonly FormulaCell[],
  { cut, beyond }: Holds,
  changed: Iterable<ChangedCell>,
  isOurs: (cell: FormulaCell) => boolean,
  { metadata, implementations }: Functions,
  onProgress?: OnProgress,
): Promise<Computed> {
  if (formulas.length === 0) return { results: new Map(), hasCircle: false };
  const live = formulas.map((cell) => ({
    ...cell,
    formula: engineFormula(cell, book),
    cut: cut.has(cell),
    beyond: beyond.get(cell),
  }));
  const workbook = await openCalculation(
    book,
    { formulas: live, changed },
    metadata,
    implementations,
    onProgress,
  );
  try {
    return {
      results: new Map(formulas.map((cell) => [cell, resultOf(cell, workbook, isOurs(cell))])),
      hasCircle: workbook.hasCircle(),
    };
  } finally {
    workbook.close();
  }
}

function resultOf(cell: FormulaCell, workbook: HeadlessWorkbook, ours: boolean): Result {
  const { name } = cell.sheet;
  return placeResult(
    cell,
    filledBy(cell, workbook),
    (row, column) => workbook.read(name, cellAddress(row, column)),
    ours ? (row, column) => workbook.message(name, cellAddress(row, column)) : undefined,
  );
}

/** The cells that a result fills: one, unless it spilled. */
function filledBy({ sheet, row, column }: FormulaCell, workbook: HeadlessWorkbook): Area {
  const address = cellAddress(row, column);
  const blocked = workbook.read(sheet.name, address) === "#SPILL!";
  const spill = blocked ? undefined : workbook.spill(sheet.name, address);
  return {
    startRow: row,
    startColumn: column,
    endRow: spill?.endRow ?? row,
    endColumn: spill?.endColumn ?? column,
  };
}
