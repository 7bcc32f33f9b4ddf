import type { IWorkbookData } from "@univerjs/core";
import { LocaleType } from "@univerjs/core";

/** A workbook with one empty sheet. */
export function emptyWorkbook(id: string): IWorkbookData {
  const sheet = { id: "sheet1", name: "Sheet1", rowCount: 200, columnCount: 26 };
  return {
    id,
    name: "",
    appVersion: "",
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: [sheet.id],
    sheets: { [sheet.id]: sheet },
    resources: [],
  };
}
