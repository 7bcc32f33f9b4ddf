import type { IRange } from "@univerjs/core";
import type { FWorksheet } from "@univerjs/sheets/facade";
import { cellAddress } from "../../../formula/address";
import type { PageWorkbook } from "../spreadsheet";

/** From the first cell to the last that shows anything, what formulas spill included. */
export function printedRange(workbook: PageWorkbook, sheet: FWorksheet): IRange {
  let endRow = 0;
  let endColumn = 0;
  sheet
    .getSheet()
    .getCellMatrix()
    .forValue((row, column, cell) => {
      const isFormula = Boolean(cell?.f ?? cell?.si);
      if (!isFormula && !cell?.p && (cell?.v ?? "") === "") return;
      const address = cellAddress(row, column);
      const spilled = isFormula ? workbook.spill(sheet.getSheetName(), address) : undefined;
      // A result without room is computed all the same, and shows in its own cell only.
      const shown = cell?.v === "#SPILL!" ? undefined : spilled;
      endRow = Math.max(endRow, shown?.endRow ?? row);
      endColumn = Math.max(endColumn, shown?.endColumn ?? column);
    });
  return {
    startRow: 0,
    startColumn: 0,
    endRow: Math.min(endRow, sheet.getMaxRows() - 1),
    endColumn: Math.min(endColumn, sheet.getMaxColumns() - 1),
  };
}
