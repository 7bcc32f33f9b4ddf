import type { ICellData, Univer } from "@univerjs/core";
import { BooleanNumber, CellValueType } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import type { FWorksheet } from "@univerjs/sheets/facade";
import { cellsOf, parseArea } from "../../formula/address";
import { respell } from "../../formula/spelling";
import type { Insertion } from "../../pane/insert/insertion";
import { makeRoom } from "./growth/room";

/** A character of the sheet's usual font and the room at a cell's sides, in pixels. */
const CHARACTER = 7.5;
const SIDES = 14;

/** Writes what the pane inserts: formula, headings and formats in one step, so that one undo takes them out. */
export async function writeInsertion(
  univer: Univer,
  api: FUniver,
  sheet: FWorksheet,
  { address, formula, headings, formats, widths }: Insertion,
): Promise<void> {
  const place = { unitId: sheet.getWorkbook().getUnitId(), subUnitId: sheet.getSheetId() };
  const value: Record<number, Record<number, ICellData>> = {};
  const merge = (at: string, cell: ICellData) => {
    const area = parseArea(at);
    if (!area) return;
    for (const { row, column } of cellsOf(area)) {
      const inRow = (value[row] ??= {});
      const before = inRow[column];
      inRow[column] = { ...before, ...cell, s: { ...styleIn(before), ...styleIn(cell) } };
    }
  };
  for (const { address: at, format } of formats) merge(at, { s: { n: { pattern: format } } });
  for (const { address: at, text } of headings) {
    const words = text === undefined ? {} : { v: text, t: CellValueType.STRING };
    merge(at, { ...words, s: { bl: BooleanNumber.TRUE } });
  }
  merge(address, { f: respell(formula, "excel") });

  const rows = Object.keys(value).map(Number);
  const columns = Object.values(value).flatMap((row) => Object.keys(row).map(Number));
  const corner = {
    row: Math.max(...rows),
    column: Math.max(...columns),
    rowOffset: 0,
    columnOffset: 0,
  };
  makeRoom(univer, { unitId: place.unitId, sheetId: place.subUnitId }, corner);
  for (const [column, characters] of Object.entries(widths)) {
    const wanted = Math.ceil(characters * CHARACTER + SIDES);
    if (sheet.getColumnWidth(Number(column)) < wanted) sheet.setColumnWidth(Number(column), wanted);
  }
  await api.executeCommand("sheet.command.set-range-values", { ...place, value });
  sheet.getRange(address).activate();
}

const styleIn = (cell: ICellData | undefined) => (typeof cell?.s === "object" ? cell.s : {});
