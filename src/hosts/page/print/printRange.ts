import type { IRange } from "@univerjs/core";
import type { FWorksheet } from "@univerjs/sheets/facade";
import { cellAddress } from "../../../formula/address";
import type { PageWorkbook } from "../spreadsheet";

/** From the first cell to the last that shows anything, what formulas spill included; a formula's "" shows nothing. */
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
  const last = {
    row: Math.min(endRow, sheet.getMaxRows() - 1),
    column: Math.min(endColumn, sheet.getMaxColumns() - 1),
  };
  const shows = (row: number, column: number) =>
    (workbook.readCell(sheet.getSheetName(), cellAddress(row, column)) ?? "") !== "";
  const upTo = (end: number, isShown: (index: number) => boolean) => {
    while (end > 0 && !isShown(end)) end--;
    return end;
  };
  const any = (count: number, isShown: (index: number) => boolean) =>
    Array.from({ length: count + 1 }, (_, index) => index).some(isShown);
  const row = upTo(last.row, (at) => any(last.column, (column) => shows(at, column)));
  const column = upTo(last.column, (at) => any(row, (above) => shows(above, at)));
  return { startRow: 0, startColumn: 0, endRow: row, endColumn: column };
}
