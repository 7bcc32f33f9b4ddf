import type { IRange } from "@univerjs/core";
import { BaseFunction, BaseReferenceObject, FormulaRuntimeService } from "@univerjs/engine-formula";
import { LAST_COLUMN, LAST_ROW } from "../formula/address";

/*
 * Formulas may use every cell that a file's sheet can have.
 *
 * The engine takes the rows and columns that a sheet happens to have for its end: what spills past
 * them is an error, and so is a reference to an empty cell beyond. Whoever shows the sheet lets it
 * grow as far as it is used (see the page's `growth/`).
 */

// The step is the engine's own, which no subclass may replace; named so, one that is renamed does not compile.
FormulaRuntimeService.prototype["_checkIfArrayFormulaExceeded"] = (
  _rows: number,
  _columns: number,
  spill: IRange,
) => isBeyond(spill);

BaseReferenceObject.prototype.isExceedRange = function () {
  const range = this.getRangePosition();
  return range.startRow < 0 || range.startColumn < 0 || isBeyond(range);
};

// SEQUENCE and RANDARRAY ask this before they make anything.
const setSize = Object.getOwnPropertyDescriptor(BaseFunction.prototype, "setSheetRowColumnCount")!
  .value as BaseFunction["setSheetRowColumnCount"];
BaseFunction.prototype.setSheetRowColumnCount = function () {
  setSize.call(this, LAST_ROW + 1, LAST_COLUMN + 1);
};

const isBeyond = ({ endRow, endColumn }: IRange) => endRow > LAST_ROW || endColumn > LAST_COLUMN;
