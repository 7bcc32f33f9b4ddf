import type { ICellData, IWorkbookData } from "@univerjs/core";
import { LocaleType } from "@univerjs/core";
import type { CellValue } from "../../xlsx/model";
import { contentData } from "./content";
import { NAMES_RESOURCE } from "./names";

/** Sheets by name, each as rows of contents from A1 on; text that starts with "=" is a formula. */
export type Contents = Readonly<Record<string, readonly (readonly CellValue[])[]>>;

/** Room for results that spill below and beside what a sheet holds. */
const ROOM = { rows: 100, columns: 26 };

/** Sheets of plain contents, and formulas by the names that stand for them. */
export function contentsData(
  sheets: Contents,
  names: Readonly<Record<string, string>> = {},
): IWorkbookData {
  const listed = Object.entries(sheets).map(([name, rows], position) => ({
    id: `sheet${position + 1}`,
    name,
    rowCount: rows.length + ROOM.rows,
    columnCount: rows.reduce((most, { length }) => Math.max(most, length), 0) + ROOM.columns,
    cellData: Object.fromEntries(rows.map((row, index) => [index, rowData(row)])),
  }));
  const namesData = Object.entries(names).map(([name, formulaOrRefString], index) => {
    const id = `name${index + 1}`;
    return [id, { id, name, formulaOrRefString }];
  });
  return {
    id: "contents",
    name: "",
    appVersion: "",
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: listed.map(({ id }) => id),
    sheets: Object.fromEntries(listed.map((sheet) => [sheet.id, sheet])),
    resources: [{ name: NAMES_RESOURCE, data: JSON.stringify(Object.fromEntries(namesData)) }],
  };
}

function rowData(row: readonly CellValue[]): Record<number, ICellData> {
  const cells = row.flatMap((content, column): [number, ICellData][] => {
    const isFormula = typeof content === "string" && content.startsWith("=");
    const cell = isFormula ? { f: content } : contentData(content);
    return cell ? [[column, cell]] : [];
  });
  return Object.fromEntries(cells);
}
