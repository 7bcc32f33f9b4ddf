import { ArrayValueObject, BaseReferenceObject } from "@univerjs/engine-formula";

import { expectRoomFor } from "./sizes";

const { toArrayValueObject } = BaseReferenceObject.prototype;

/** The cells of a range as the engine keeps them while it calculates: to be read, and never changed. */
export const keptCells = (reference: BaseReferenceObject): ArrayValueObject =>
  toArrayValueObject.call(reference);

/**
 * Gives every function a list of its own of the cells in a range.
 *
 * The engine keeps the cells of a range while it calculates, and hands the same list to all that
 * read it. SORT puts that list in order where it is, so that SUMIF beside it adds up other rows.
 */
export function readRangesIntoOwnArrays(): void {
  BaseReferenceObject.prototype.toArrayValueObject = function (useCache) {
    expectRoomFor(this.getRangePosition());
    const kept = toArrayValueObject.call(this, useCache);
    return ArrayValueObject.create({
      calculateValueList: kept.getArrayValue().map((row) => row.slice()),
      rowCount: kept.getRowCount(),
      columnCount: kept.getColumnCount(),
      unitId: kept.getUnitId(),
      sheetId: kept.getSheetId(),
      row: kept.getCurrentRow(),
      column: kept.getCurrentColumn(),
    });
  };
}
