import type { IRange } from "@univerjs/core";
import type { FWorksheet } from "@univerjs/sheets/facade";
import { areaAddress, cellAddress, parseArea } from "../../formula/address";
import { partsOf, plainAddress } from "../../pane/formula/reference";
import { freeName } from "../../pane/sheetName";
import type { CellValues, PlacedFormula, Port, Selection } from "../../pane/port";
import { loneSheetData } from "../../engine/data/readySheets";
import { parseRange } from "../../readySheets/address";
import { placePicture } from "./placePicture";
import type { PageWorkbook } from "./spreadsheet";
import { writeInsertion } from "./writeInsertion";

/** The pane's port to the workbook on the page. */
export function workbookPort({ api, univer, readCell, onChange }: PageWorkbook): Port {
  const book = () => api.getActiveWorkbook()!;

  function cellsOf(sheet: FWorksheet, range: IRange): CellValues {
    const rows: ReturnType<typeof readCell>[][] = [];
    for (let row = range.startRow; row <= range.endRow; row++) {
      const values = [];
      for (let column = range.startColumn; column <= range.endColumn; column++) {
        values.push(readCell(sheet.getSheetName(), cellAddress(row, column)));
      }
      rows.push(values);
    }
    return rows;
  }

  function firstFilledIn(sheet: FWorksheet, area: IRange): string | undefined {
    for (let row = area.startRow; row <= area.endRow; row++) {
      for (let column = area.startColumn; column <= area.endColumn; column++) {
        const address = cellAddress(row, column);
        const content = readCell(sheet.getSheetName(), address);
        const cell = sheet.getSheet().getCellRaw(row, column);
        const isFormula = Boolean(cell?.f ?? cell?.si);
        if ((content !== null && content !== "") || isFormula) return address;
      }
    }
    return undefined;
  }

  return {
    readSelection() {
      const sheet = book().getActiveSheet();
      const selected = book().getActiveRange();
      const range = cut(sheet, selected?.getRange() ?? ORIGIN);
      const selection: Selection = {
        sheet: sheet.getSheetName(),
        address: areaAddress(range),
        values: cellsOf(sheet, range),
      };
      return Promise.resolve(selection);
    },

    readRange(reference) {
      const { sheet: name, address } = partsOf(reference);
      const sheet = name === undefined ? book().getActiveSheet() : book().getSheetByName(name);
      if (!sheet) return Promise.reject(new Error(`no sheet is called "${name}"`));
      try {
        return Promise.resolve(cellsOf(sheet, cut(sheet, parseRange(plainAddress(address)))));
      } catch (error) {
        return Promise.reject(error instanceof Error ? error : new Error(String(error)));
      }
    },

    readTarget() {
      const sheet = book().getActiveSheet().getSheetName();
      const cell = book().getActiveCell();
      const address = cell ? cellAddress(cell.getRow(), cell.getColumn()) : "A1";
      const content = readCell(sheet, address);
      return Promise.resolve({
        sheet,
        address,
        filled: (content !== null && content !== "") || Boolean(cell?.getFormula()),
        inTable: false,
      });
    },

    firstFilled(reference) {
      const { sheet: name, address } = partsOf(reference);
      const sheet = name === undefined ? book().getActiveSheet() : book().getSheetByName(name);
      const area = parseArea(plainAddress(address));
      return Promise.resolve(sheet && area ? firstFilledIn(sheet, area) : undefined);
    },

    formulasOn(name) {
      const formulas: PlacedFormula[] = [];
      const sheet = book().getSheetByName(name)?.getSheet();
      sheet?.getCellMatrix().forValue((row, column, cell) => {
        if (cell?.f) formulas.push({ address: cellAddress(row, column), formula: cell.f });
      });
      return Promise.resolve(formulas);
    },

    async insert(insertion) {
      const sheet = book().getSheetByName(insertion.sheet);
      if (!sheet) throw new Error(`no sheet is called "${insertion.sheet}"`);
      await writeInsertion(univer, api, sheet, insertion);
    },

    addSheet(sheet) {
      const taken = book()
        .getSheets()
        .map((each) => each.getSheetName());
      const name = freeName(sheet.name, taken);
      book().insertSheet(name, { sheet: loneSheetData(sheet) });
      return Promise.resolve(name);
    },

    addImage(picture) {
      const sheet = book().getActiveSheet();
      return placePicture(univer, sheet, book().getActiveRange() ?? sheet.getRange("A1"), picture);
    },

    onSelectionChange: onChange,
  };
}

const ORIGIN: IRange = { startRow: 0, startColumn: 0, endRow: 0, endColumn: 0 };

/** Whole rows and columns end where the sheet's contents do. */
function cut(sheet: FWorksheet, range: IRange): IRange {
  const wholeColumns =
    Number.isNaN(range.startRow) ||
    (range.startRow === 0 && range.endRow >= sheet.getMaxRows() - 1);
  const wholeRows =
    Number.isNaN(range.startColumn) ||
    (range.startColumn === 0 && range.endColumn >= sheet.getMaxColumns() - 1);
  return {
    startRow: wholeColumns ? 0 : range.startRow,
    endRow: wholeColumns ? Math.max(0, sheet.getLastRow()) : range.endRow,
    startColumn: wholeRows ? 0 : range.startColumn,
    endColumn: wholeRows ? Math.max(0, sheet.getLastColumn()) : range.endColumn,
  };
}
