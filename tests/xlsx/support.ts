import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { ICellData, IWorkbookData } from "@univerjs/core";
import { parseCell } from "../../src/formula/address";
import { readPackage, readWorkbook } from "../../src/xlsx";

export const files = ["xlsxwriter", "openpyxl", "exceljs", "libreoffice"] as const;

/** The bytes of one of the workbooks in `files/`. */
export function bytesOf(name: string): Uint8Array {
  return new Uint8Array(readFileSync(join(import.meta.dirname, "files", `${name}.xlsx`)));
}

export function openFile(name: string): IWorkbookData {
  return readWorkbook(readPackage(bytesOf(name)));
}

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
  const rows = (data.sheets[id].cellData ?? {}) as Record<number, Record<number, ICellData>>;
  return Object.entries(rows).flatMap(([row, cells]) =>
    Object.entries(cells).map(([column, cell]) => ({
      row: Number(row),
      column: Number(column),
      cell,
    })),
  );
}
