import { cellAddress, gridOf, type Area } from "../formula/address";
import { isError, type CellValue } from "../xlsx/model";
import type { FormulaCell } from "./book";

/** An error that one of our functions shows in a cell, with what it says about it. */
export interface Failure {
  readonly sheet: string;
  readonly address: string;
  readonly code: string;
  readonly message: string | undefined;
}

/** What a formula came to. */
export interface Result {
  /** The cells it fills now. */
  readonly area: Area;
  /** What stands in them, row by row. */
  readonly values: readonly (readonly CellValue[])[];
  /** The cells that the result would fill by itself, were it not held to those of a fixed array. */
  readonly natural: Area;
  readonly failures: readonly Failure[];
}

/**
 * A formula's result in the cells it fills. In those of a fixed array, a result of one row or one column
 * is repeated, and any other ends where it ends, with #N/A behind it.
 */
export function placeResult(
  cell: FormulaCell,
  natural: Area,
  valueAt: (row: number, column: number) => CellValue,
  messageAt: ((row: number, column: number, code: string) => string | undefined) | undefined,
): Result {
  const area = cell.kind === "fixed array" ? cell.area : natural;
  const failures: Failure[] = [];
  const values = gridOf(area, (row, column) => {
    const source = stretched(natural, row, column);
    const value = source ? valueAt(source.row, source.column) : "#N/A";
    if (messageAt && isError(value)) {
      failures.push({
        sheet: cell.sheet.name,
        address: cellAddress(row, column),
        code: value,
        message: messageAt(row, column, value),
      });
    }
    return value;
  });
  return { area, values, natural, failures };
}

/** Which cell of a result a cell of a fixed array shows. */
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

/** The value that a result has in a cell that it fills. */
export const valueIn = (
  { area, values }: Pick<Result, "area" | "values">,
  row: number,
  column: number,
): CellValue => values[row - area.startRow]?.[column - area.startColumn] ?? null;

/** The value in the formula's own cell. */
export const ownValue = ({ values }: Pick<Result, "values">): CellValue => values[0]?.[0] ?? null;

/** Whether two results fill the same cells with the same values. */
export function sameResult(one: Result, other: Result): boolean {
  return (
    one.area.endRow === other.area.endRow &&
    one.area.endColumn === other.area.endColumn &&
    one.values.every((row, at) =>
      row.every((value, column) => value === other.values[at]?.[column]),
    )
  );
}

/** The 15 digits that a spreadsheet shows of a number; some programs save 17. */
const RELATIVE = 1e-14;

/** Whether a file that holds one value need not be changed to hold another. */
export function sameValue(one: CellValue, other: CellValue): boolean {
  if (typeof one !== "number" || typeof other !== "number") return one === other;
  return Math.abs(one - other) <= RELATIVE * Math.max(Math.abs(one), Math.abs(other));
}

/** Whether a formula comes to what the file holds for it already. */
export function isAsSaved({ sheet, area: before }: FormulaCell, { area, values }: Result): boolean {
  if (before.endRow !== area.endRow || before.endColumn !== area.endColumn) return false;
  return values.every((row, down) =>
    row.every((value, right) => {
      const there = sheet.cellAt(area.startRow + down, area.startColumn + right);
      return sameValue(value, there?.value ?? null);
    }),
  );
}
