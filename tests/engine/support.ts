import type { ICellData, IWorkbookData } from "@univerjs/core";
import { CellValueType } from "@univerjs/core";
import type { CellContent } from "../../src/engine/inspect";
import { openWorkbook } from "../../src/engine/headless";
import { implementations } from "../../src/functions/implementations";
import { parseCell } from "../../src/formula/address";
import { readMetadata } from "../../src/tools/catalogue";
import { elementAt } from "../present";

export type Cells = Readonly<Record<string, string | number | boolean | null>>;

export interface Opened {
  read(address: string, sheet?: string): CellContent;
  write(address: string, content: number | string | null): Promise<void>;
  close(): void;
}

/** Opens a workbook without a screen, with these cells on its only sheet, "One". */
export const openCells = (cells: Cells): Promise<Opened> => openSheets({ One: cells });

/** The same with several sheets, and with names. */
export async function openSheets(
  sheets: Readonly<Record<string, Cells>>,
  names: Readonly<Record<string, string>> = {},
): Promise<Opened> {
  const first = elementAt(Object.keys(sheets), 0);
  const book = await openWorkbook(dataOf(sheets, names), readMetadata(), implementations);
  return {
    read: (address, sheet = first) => book.read(sheet, address),
    write: (address, content) => book.write(first, address, content),
    close: () => book.close(),
  };
}

function dataOf(
  sheets: Readonly<Record<string, Cells>>,
  names: Readonly<Record<string, string>>,
): IWorkbookData {
  const defined = Object.entries(names).map(([name, formulaOrRefString]) => {
    return [name, { id: name, name, formulaOrRefString, localSheetId: "AllDefaultWorkbook" }];
  });
  return {
    id: "book",
    name: "Book",
    appVersion: "",
    locale: "enUS" as IWorkbookData["locale"],
    styles: {},
    sheetOrder: Object.keys(sheets),
    sheets: Object.fromEntries(
      Object.entries(sheets).map(([name, cells]) => {
        return [name, { id: name, name, rowCount: 200, columnCount: 40, cellData: grid(cells) }];
      }),
    ),
    resources: [
      { name: "SHEET_DEFINED_NAME_PLUGIN", data: JSON.stringify(Object.fromEntries(defined)) },
    ],
  };
}

function grid(cells: Cells): Record<number, Record<number, ICellData>> {
  const data: Record<number, Record<number, ICellData>> = {};
  for (const [address, content] of Object.entries(cells)) {
    const { row, column } = parseCell(address)!;
    if (content !== null) (data[row] ??= {})[column] = cellOf(content);
  }
  return data;
}

function cellOf(content: string | number | boolean): ICellData {
  if (typeof content === "boolean") return { v: content ? 1 : 0, t: CellValueType.BOOLEAN };
  if (typeof content === "number") return { v: content, t: CellValueType.NUMBER };
  return content.startsWith("=") ? { f: content } : { v: content, t: CellValueType.STRING };
}
