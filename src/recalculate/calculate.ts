import type { HeadlessWorkbook, OnProgress } from "../engine/headless";
import { openCalculation } from "../engine/headless";
import { knownFunctions } from "../engine/known";
import type { FunctionsMetadata, Implementations } from "../engine/metadata";
import { callsOurs } from "../formula/spelling";
import { cellAddress, cellsOf, type Area } from "../formula/address";
import { withoutLocalNames } from "../formula/names";
import { plainFormula } from "../formula/plain";
import { writeOutSheets } from "../formula/sheetRanges";
import { isError, type CellValue } from "../xlsx/model";
import type { Book, FormulaCell } from "./book";
import { findCircles } from "./circles";
import { findDependence } from "./dependence";
import { findNeed } from "./need";
import { findUnable } from "./unable";

/** What a formula came to. */
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

export interface Failure {
  readonly sheet: string;
  readonly address: string;
  readonly code: string;
  readonly message: string | undefined;
}

/** What the engine is to compute with. */
export interface Functions {
  readonly metadata: FunctionsMetadata;
  readonly implementations: Implementations;
}

/** Adjusting one formula can bring another to light, but never many times over. */
const mostPasses = 8;

/**
 * Works out a workbook's formulas: ours, what they read and what reads them.
 *
 * A formula that the engine cannot work out as Excel would keeps its saved value, and others go on
 * from that. Some of these show only once they were tried: a formula with no part in ours that
 * comes to an error, where the program that saved the workbook had a value, is one.
 */
export async function calculate(
  book: Book,
  { metadata, implementations }: Functions,
  onProgress?: OnProgress,
): Promise<Outcome[]> {
  if (!usesOurs(book)) return [];
  const adjustments: OpenAdjustments = { left: new Map(), cut: new Set(), beyond: new Map() };
  const unable = findUnable(book, await knownFunctions());
  for (const cell of book.formulas) {
    const reason = unable(cell);
    if (reason) adjustments.left.set(cell, reason);
  }
  const { depends, readsOf } = findDependence(book);
  const needsOurs = findNeed(book);
  for (let pass = 1; ; pass++) {
    const live = liveFormulas(book, adjustments);
    const workbook = await openCalculation(book, live, metadata, implementations, onProgress);
    try {
      if (pass === 1 && workbook.hasCircle()) {
        const circular = findCircles(book.formulas, readsOf);
        for (const cell of circular) adjustments.left.set(cell, "it reads its own result");
        if (circular.size > 0) continue;
      }
      const attempts = book.formulas.map((cell) =>
        attempt(cell, needsOurs(cell), workbook, adjustments.left.get(cell)),
      );
      if (pass === mostPasses || !adjust(attempts, adjustments, depends)) return attempts;
    } finally {
      workbook.close();
    }
  }
}

/** The formulas that are not left, as the engine reads them. */
function liveFormulas(book: Book, { left, cut, beyond }: OpenAdjustments) {
  return book.formulas
    .filter((cell) => !left.has(cell))
    .map((cell) => ({
      ...cell,
      formula: engineFormula(cell, book),
      cut: cut.has(cell),
      beyond: beyond.get(cell),
    }));
}

/** A formula of the file as the formula engine reads it, with its "=". */
export function engineFormula(
  { text, sheet, row, column }: FormulaCell,
  { names, tables, sheets }: Book,
): string {
  const standing = { sheet: sheet.name, row, column };
  const plain = withoutLocalNames(plainFormula(text, tables, standing), names, tables, standing);
  return writeOutSheets(
    plain,
    sheets.map(({ name }) => name),
  );
}

/** Whether any formula, in a cell or behind a name, calls one of our functions. */
export function usesOurs({ formulas, names }: Book): boolean {
  return [...formulas, ...names].some(({ text }) => callsOurs(text));
}

/** An outcome, and the cells that the engine's result for it filled by itself. */
interface Attempt extends Outcome {
  readonly result: Area;
}

function attempt(
  cell: FormulaCell,
  ours: boolean,
  workbook: HeadlessWorkbook,
  reason?: string,
): Attempt {
  const { area: saved, sheet, kind } = cell;
  if (reason !== undefined) {
    const values = [[cell.saved]];
    return { cell, ours, area: saved, values, left: reason, failures: [], result: saved };
  }
  const result = filledBy(cell, workbook);
  const area = kind === "fixed array" ? saved : result;
  const values = count(area.startRow, area.endRow).map((row) =>
    count(area.startColumn, area.endColumn).map((column): CellValue => {
      const source = stretched(result, row, column);
      if (!source) return "#N/A";
      const value = workbook.read(sheet.name, cellAddress(source.row, source.column));
      return value ?? (source.row === cell.row && source.column === cell.column ? 0 : null);
    }),
  );
  const failures = ours ? failuresIn(values, area, sheet.name, workbook) : [];
  return { cell, ours, area, values, failures, result };
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

/**
 * Which cell of a result a cell of a fixed array shows: a result of one row or one column is
 * repeated over the array, and any other ends where it ends.
 */
function stretched(
  { startRow, startColumn, endRow, endColumn }: Area,
  row: number,
  column: number,
) {
  const source = {
    row: startRow === endRow ? startRow : row,
    column: startColumn === endColumn ? startColumn : column,
  };
  return source.row <= endRow && source.column <= endColumn ? source : undefined;
}

function failuresIn(
  values: Outcome["values"],
  area: Area,
  sheet: string,
  workbook: HeadlessWorkbook,
): Failure[] {
  return [...cellsOf(area)].flatMap(({ row, column }): Failure[] => {
    const code = values[row - area.startRow][column - area.startColumn];
    const address = cellAddress(row, column);
    return isError(code)
      ? [{ sheet, address, code, message: workbook.message(sheet, address) }]
      : [];
  });
}

/** What the engine is to see otherwise than the file says it. */
interface OpenAdjustments {
  /** Formulas that keep their saved value, which stands there as if it had been typed. */
  readonly left: Map<FormulaCell, string>;
  /** Formulas whose result is to be cut to the cells they fill. */
  readonly cut: Set<FormulaCell>;
  /** What stands in those cells of an array that its result does not reach. */
  readonly beyond: Map<FormulaCell, ReadonlyMap<string, CellValue>>;
}

/** Adds to the adjustments what this pass brought to light; says whether there was anything. */
function adjust(
  attempts: readonly Attempt[],
  { left, cut, beyond }: OpenAdjustments,
  depends: (cell: FormulaCell) => boolean,
): boolean {
  let adjusted = false;
  for (const attempted of attempts) {
    const { cell, ours, result } = attempted;
    if (attempted.left !== undefined) continue;
    const value = attempted.values[0][0];
    const tooLarge =
      value === "#SPILL!" ||
      result.endRow > cell.area.endRow ||
      result.endColumn > cell.area.endColumn;
    if (cell.kind !== "spilling" && tooLarge && !cut.has(cell)) {
      if (ours || cell.kind === "fixed array") cut.add(cell);
      else left.set(cell, "it takes one cell of a range, by where it stands");
    } else if (isError(value) && !ours && hasValue(cell.saved) && !depends(cell)) {
      left.set(cell, `the engine comes to ${value}`);
    } else if (cell.kind === "fixed array" && !beyond.has(cell)) {
      const padding = paddingOf(attempted);
      if (padding.size === 0) continue;
      beyond.set(cell, padding);
    } else continue;
    adjusted = true;
  }
  return adjusted;
}

/** What stands in the cells of a fixed array that its result leaves. */
function paddingOf({ area, result, values }: Attempt): Map<string, CellValue> {
  const padding = new Map<string, CellValue>();
  for (const { row, column } of cellsOf(area)) {
    if (row <= result.endRow && column <= result.endColumn) continue;
    padding.set(cellAddress(row, column), values[row - area.startRow][column - area.startColumn]);
  }
  return padding;
}

const hasValue = (saved: CellValue) => saved !== null && !isError(saved);

const count = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, index) => from + index);
