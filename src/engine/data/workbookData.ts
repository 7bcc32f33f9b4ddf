import type { IWorkbookData } from "@univerjs/core";
import { LocaleType } from "@univerjs/core";
import { layoutOf } from "../../xlsx/layout";
import type { WorkbookModel } from "../../xlsx/model";
import { filtersData } from "./filters";
import { namesData } from "./names";
import { pictureData, picturesData } from "./pictures";
import { sheetData } from "./sheetData";
import { styleData } from "./style";

/**
 * A workbook as the page shows it: values, formulas with the values they were saved with, looks, sizes,
 * merged cells, frozen panes, filters, names and pictures. Our functions come in Excel's spelling whatever the
 * file's is, and references into tables as plain ranges. Of a workbook that counts days from 1904, the
 * cells that show dates are brought to the count from 1900.
 */
export function workbookData(book: WorkbookModel, name = "Workbook"): IWorkbookData {
  const styles = book.styles.map(styleData);
  const idOf = (position: number) => `sheet${position + 1}`;
  const sheets = book.sheets.map((sheet, position) => sheetData(idOf(position), sheet, book));
  const pictures = book.sheets.flatMap((sheet, position) => {
    if (sheet.pictures.length === 0) return [];
    const id = idOf(position);
    return [[id, sheet.pictures.map(pictureData(id, layoutOf(sheet)))] as const];
  });
  return {
    id: "workbook",
    name,
    appVersion: "",
    locale: LocaleType.EN_US,
    styles: Object.fromEntries(styles.map((style, index) => [String(index), style])),
    // Every look in a file is complete; more than a font here would show through the others.
    ...(styles[0] && { defaultStyle: { ff: styles[0].ff, fs: styles[0].fs } }),
    sheetOrder: book.sheets.map((_, position) => idOf(position)),
    sheets: Object.fromEntries(sheets.map((sheet, position) => [idOf(position), sheet])),
    resources: [
      namesData(book, idOf),
      picturesData(new Map(pictures)),
      filtersData(book.sheets, idOf),
    ],
  };
}
