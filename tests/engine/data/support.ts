import type { ICellData, IWorkbookData } from "@univerjs/core";
import type { ComputedWorkbook } from "../../../src/engine/data";
import { workbookData, workbookModel } from "../../../src/engine/data";
import { parseCell } from "../../../src/formula/address";
import { readPackage, readWorkbook, writeWorkbook } from "../../../src/xlsx";
import { elementAt, named } from "../../present";
import { bytesOf } from "../../xlsx/support";

/** A workbook's file as the page opens it. */
export const readData = (bytes: Uint8Array): IWorkbookData =>
  workbookData(readWorkbook(readPackage(bytes)));

/** An open workbook as the file that the page saves. */
export const writeData = (book: ComputedWorkbook): Uint8Array => writeWorkbook(workbookModel(book));

/** One of the workbooks in `tests/xlsx/files`. */
export const openFile = (name: string): IWorkbookData => readData(bytesOf(name));

/** The sheet in a place of a workbook's data, counted from 0. */
export const sheetAt = (data: IWorkbookData, place: number) =>
  named(data.sheets, elementAt(data.sheetOrder, place));

/** Looks into a workbook's data by the names of sheets and the addresses of cells. */
export function lookInto(data: IWorkbookData) {
  const sheetNamed = (name: string) =>
    Object.values(data.sheets).find((sheet) => sheet.name === name)!;
  const cell = (sheet: string, address: string): ICellData => {
    const { row, column } = parseCell(address)!;
    return sheetNamed(sheet).cellData?.[row]?.[column] ?? {};
  };
  const style = (sheet: string, address: string) => data.styles[String(cell(sheet, address).s)]!;
  return { sheetNamed, cell, style };
}

/** A sheet's cells in their order, each with its row and column counted from 0. */
export function cellsOf(data: IWorkbookData, id: string) {
  const sheet = named(data.sheets, id);
  const rows = (sheet.cellData ?? {}) as Record<number, Record<number, ICellData>>;
  return Object.entries(rows).flatMap(([row, cells]) =>
    Object.entries(cells).map(([column, cell]) => ({
      row: Number(row),
      column: Number(column),
      cell,
    })),
  );
}
