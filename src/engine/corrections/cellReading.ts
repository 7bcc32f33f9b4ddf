import type { ICellData, IRange, Nullable } from "@univerjs/core";
import { CellValueType, ObjectMatrix } from "@univerjs/core";
import type { BaseValueObject } from "@univerjs/engine-formula";
import {
  BaseReferenceObject,
  ErrorType,
  ErrorValueObject,
  NumberValueObject,
} from "@univerjs/engine-formula";
import { contains } from "../../formula/address";
import { expectRoomFor } from "./sizes";

/**
 * How a formula reads the cells of a range.
 *
 * The engine takes the empty text that a formula returns for a blank cell, and so for 0, but only
 * where that formula was computed in the same calculation. Here a cell whose formula says `""` holds
 * text always: `""=0` is false, and COUNTA counts it. A cell that was cleared is left as `""` by the
 * page's editor, so without a formula it is blank.
 */
export function readEmptyTextAsText(): void {
  const reading: Pick<BaseReferenceObject, "iterator" | "getFirstCell" | "getCellData"> = {
    iterator(this: BaseReferenceObject, callback) {
      const range = this.getRangePosition();
      expectRoomFor(range);
      const { startRow, endRow, startColumn, endColumn } = range;
      if (isOnMissingSheet(this)) {
        return callback(ErrorValueObject.create(ErrorType.REF), startRow, startColumn);
      }
      for (let row = startRow; row <= endRow; row++) {
        for (let column = startColumn; column <= endColumn; column++) {
          if (row < 0 || column < 0) {
            return callback(ErrorValueObject.create(ErrorType.REF), row, column);
          }
          const first = row === startRow && column === startColumn;
          const value = valueAt(this, row, column, first);
          if (callback(value, row, column) === false && value !== null) return undefined;
        }
      }
      return undefined;
    },
    getFirstCell(this: BaseReferenceObject) {
      if (isOnMissingSheet(this)) return ErrorValueObject.create(ErrorType.REF);
      const { startRow, startColumn } = this.getRangePosition();
      return valueAt(this, startRow, startColumn, true) ?? NumberValueObject.create(0);
    },
    getCellData(this: BaseReferenceObject, row, column) {
      return computedAt(this, row, column) ?? storedAt(this, row, column);
    },
  };
  Object.assign(BaseReferenceObject.prototype, reading);
}

/** The engine reads a sheet it does not know as the formula's own. */
export function isOnMissingSheet(reference: BaseReferenceObject): boolean {
  return reference.getForcedSheetName() !== "" && !reference.getForcedSheetId();
}

/** What a cell holds for a formula; nothing where it is blank. The first cell lends its format. */
function valueAt(
  reference: BaseReferenceObject,
  row: number,
  column: number,
  first: boolean,
): BaseValueObject | null {
  const cell = filledCell(reference, row, column);
  if (!cell) return null;
  const value = reference.getCellValueObject(cell);
  if (!first || !value.isNumber()) return value;
  const pattern = reference.getCellPattern(
    reference.getUnitId(),
    reference.getSheetId(),
    row,
    column,
  );
  return pattern ? NumberValueObject.create(Number(value.getValue()), pattern) : value;
}

/** A cell that is not blank. */
export function filledCell(
  reference: BaseReferenceObject,
  row: number,
  column: number,
): ICellData | undefined {
  const computed = computedAt(reference, row, column);
  if (computed) return isEmpty(computed) && !isText(computed) ? undefined : computed;
  const stored = storedAt(reference, row, column);
  return stored && !isBlank(stored) ? stored : undefined;
}

/** What this calculation has found for a cell so far. */
function computedAt(reference: BaseReferenceObject, row: number, column: number) {
  return (
    reference.getCurrentRuntimeSheetData()?.getValue(row, column) ??
    reference.getCurrentRuntimeActiveArrayFormulaCellData()?.getValue(row, column) ??
    reference.getRuntimeFeatureCellValue(row, column)
  );
}

/** What a cell held before: what spilled over it, or its own. */
function storedAt(
  reference: BaseReferenceObject,
  row: number,
  column: number,
): Nullable<ICellData> {
  const spilled = reference.getCurrentActiveArrayFormulaCellData()?.getValue(row, column);
  if (spilled) return spillsAnew(reference, row, column) ? null : spilled;
  return reference.getCurrentActiveSheetData()?.cellData.getValue(row, column);
}

/** Whether the formula that spilled over a cell has spilled again since, elsewhere. */
function spillsAnew(reference: BaseReferenceObject, row: number, column: number): boolean {
  const now = reference.getCurrentRuntimeActiveArrayFormulaRange();
  if (!now) return false;
  const before = new ObjectMatrix<IRange>(reference.getCurrentActiveArrayFormulaRange() ?? {});
  let anew = false;
  before.forValue((fromRow, fromColumn, range) => {
    anew = contains(range, row, column) && now[fromRow]?.[fromColumn] !== undefined;
    return !anew;
  });
  return anew;
}

function isBlank(stored: ICellData): boolean {
  const { f, si, p, t } = stored;
  return isEmpty(stored) && !f && !si && !p && t !== CellValueType.FORCE_STRING;
}

const isEmpty = ({ v }: ICellData) => v === null || v === undefined || v === "";

/** Whether a computed cell holds a text, be it empty. */
const isText = ({ v, t }: ICellData) => v === "" && t === CellValueType.STRING;
