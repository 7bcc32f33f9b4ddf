import type { CellValue, FormulaModel } from "../xlsx/model";
import type { ReadSheet } from "../xlsx/read/sheet";
import type { ReadWorkbook } from "../xlsx/read/workbook";

/** A formula where it stands. */
export interface FormulaCell extends FormulaModel {
  readonly sheet: ReadSheet;
  readonly row: number;
  readonly column: number;
  /** What the file holds as its result. */
  readonly saved: CellValue;
}

/** A workbook's file with all of its formulas in one list. */
export interface Book extends ReadWorkbook {
  readonly formulas: readonly FormulaCell[];
}

export function bookOf(workbook: ReadWorkbook): Book {
  const formulas: FormulaCell[] = [];
  for (const sheet of workbook.sheets) {
    for (const { cells } of sheet.rows) {
      for (const { row, column, value, formula } of cells) {
        if (!formula) continue;
        const { text, kind, area } = formula;
        formulas.push({ sheet, row, column, text, kind, area, saved: value });
      }
    }
  }
  return { ...workbook, formulas };
}
