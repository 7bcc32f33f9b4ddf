/** Under this name the spreadsheet keeps a workbook's defined names. */
export const namesResource = "SHEET_DEFINED_NAME_PLUGIN";

/** What stands for the whole workbook where a name could belong to one sheet. */
export const wholeWorkbook = "AllDefaultWorkbook";

/** A name that stands for a range, a value or a formula, as the spreadsheet keeps it. */
export interface DefinedName {
  readonly id: string;
  readonly name: string;
  readonly formulaOrRefString: string;
  readonly localSheetId?: string;
  readonly hidden?: boolean;
  readonly comment?: string;
}
