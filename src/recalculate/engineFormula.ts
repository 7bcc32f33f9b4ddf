import { withoutLocalNames } from "../formula/names";
import { plainFormula } from "../formula/plain";
import { writeOutSheets } from "../formula/sheetRanges";
import type { Book, FormulaCell } from "./book";

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
