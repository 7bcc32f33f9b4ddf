import type { Nullable } from "@univerjs/core";
import type { BaseReferenceObject, BaseValueObject, ErrorType } from "@univerjs/engine-formula";
import {
  ArrayValueObject,
  ErrorValueObject,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/engine-formula";
import type { Grid } from "../cells";
import { CellError, onlyCell, widthOf } from "../cells";
import { filledCell, isOnMissingSheet } from "./corrections/cellReading";
import { expectRoomFor } from "./corrections/sizes";

/**
 * Between the formula engine's value objects and the plain values our functions read and return.
 *
 * A reference becomes a grid of cells, even a reference to one cell, and a value written into the
 * formula stays a single value. That keeps apart two things a sheet shows alike: an argument that
 * was left out (`undefined`) and one that points at a blank cell (`[[null]]`).
 */

/** What the engine hands a function for one argument. */
export type Argument = BaseValueObject | BaseReferenceObject;

/** Reads all the arguments of one call into plain values. */
export function readArguments(values: readonly Argument[]): unknown[] {
  const references = values.filter(isReference);
  const lastRow = furthest(
    references.filter((reference) => reference.isColumn()),
    lastUsedRow,
  );
  const lastColumn = furthest(
    references.filter((reference) => reference.isRow()),
    lastUsedColumn,
  );
  return values.map((value) =>
    isReference(value) ? readReference(value, lastRow, lastColumn) : readValue(value),
  );
}

/** Turns a function's result into what the engine puts into cells; more than one cell spills. */
export function writeGrid(grid: Grid): BaseValueObject {
  const rows = grid.map((row) => row.map(writeCell));
  const only = onlyCell(rows);
  if (only) return only;
  return ArrayValueObject.create({
    calculateValueList: rows,
    rowCount: rows.length,
    columnCount: widthOf(rows),
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
}

function writeCell(value: number | string | CellError): BaseValueObject {
  if (value instanceof CellError) return ErrorValueObject.create(value.code as ErrorType);
  if (typeof value === "number") return NumberValueObject.create(value);
  return StringValueObject.create(value);
}

function isReference(value: Argument): value is BaseReferenceObject {
  return value.isReferenceObject();
}

function readValue(value: BaseValueObject): unknown {
  if (value.isArray()) {
    return (value as ArrayValueObject).getArrayValue().map((row) => row.map(readCell));
  }
  // Nothing stands between two commas: the argument was left out.
  return value.isNull() ? undefined : readCell(value);
}

function readCell(value: Nullable<BaseValueObject>): unknown {
  if (!value || value.isNull()) return null;
  return value.isError() ? errorCell(String(value.getValue())) : value.getValue();
}

/** An error cell in the spelling Excel uses for one, which is what our functions read. */
function errorCell(code: string): unknown {
  return { type: "Error", basicType: "Error", basicValue: code };
}

function readReference(
  reference: BaseReferenceObject,
  lastRow: number,
  lastColumn: number,
): unknown {
  if (reference.isMultiArea()) return errorCell("#VALUE!");
  if (isOnMissingSheet(reference)) return errorCell("#REF!");
  const range = reference.getRangePosition();
  if (range.startRow < 0 || range.startColumn < 0) return errorCell("#REF!");
  const endRow = reference.isColumn() ? Math.max(range.startRow, lastRow) : range.endRow;
  const endColumn = reference.isRow() ? Math.max(range.startColumn, lastColumn) : range.endColumn;
  expectRoomFor({ ...range, endRow, endColumn });
  return grid(endRow - range.startRow + 1, endColumn - range.startColumn + 1, (row, column) =>
    cellAt(reference, range.startRow + row, range.startColumn + column),
  );
}

function grid<T>(rows: number, columns: number, at: (row: number, column: number) => T): T[][] {
  return Array.from({ length: rows }, (_r, row) =>
    Array.from({ length: columns }, (_c, column) => at(row, column)),
  );
}

function cellAt(reference: BaseReferenceObject, row: number, column: number): unknown {
  const cell = filledCell(reference, row, column);
  return cell ? readCell(reference.getCellValueObject(cell)) : null;
}

/*
 * A whole column (`C:C`) is read down to the last row that holds anything, not to the end of the
 * sheet, which in a workbook from Excel lies a million rows further down. All the whole columns
 * of a call end at the same row, so that columns of unequal length still pair up.
 */

function furthest(
  references: readonly BaseReferenceObject[],
  lastUsed: (reference: BaseReferenceObject) => number,
): number {
  return Math.max(0, ...references.map(lastUsed));
}

function lastUsedRow(reference: BaseReferenceObject): number {
  const { startColumn, endColumn } = reference.getRangePosition();
  const holdsAnything = (row: number) =>
    someBetween(startColumn, endColumn, (column) => cellAt(reference, row, column) !== null);
  return lastWhere(rowsStored(reference), holdsAnything);
}

function lastUsedColumn(reference: BaseReferenceObject): number {
  const { startRow, endRow } = reference.getRangePosition();
  const holdsAnything = (column: number) =>
    someBetween(startRow, endRow, (row) => cellAt(reference, row, column) !== null);
  return lastWhere(reference.getActiveSheetColumnCount(), holdsAnything);
}

/**
 * How many rows of the sheet can hold something: its own cells, and the values that formulas and
 * spills have, in this calculation and from the one before.
 */
function rowsStored(reference: BaseReferenceObject): number {
  const layers = [
    reference.getCurrentActiveSheetData()?.cellData,
    reference.getCurrentRuntimeSheetData(),
    reference.getCurrentActiveArrayFormulaCellData(),
    reference.getCurrentRuntimeActiveArrayFormulaCellData(),
  ];
  return Math.max(0, ...layers.map((layer) => layer?.getLength() ?? 0));
}

function lastWhere(count: number, holds: (index: number) => boolean): number {
  let last = count - 1;
  while (last > 0 && !holds(last)) last--;
  return last;
}

function someBetween(first: number, last: number, holds: (index: number) => boolean): boolean {
  for (let index = first; index <= last; index++) if (holds(index)) return true;
  return false;
}
