import type { ICellData, IWorkbookData, IWorksheetData } from "@univerjs/core";
import { LocaleType } from "@univerjs/core";
import { cellAddress, cellsOf, isSeveralCells, parseCell, type Area } from "../../formula/address";
import { tokensOf } from "../../formula/tokens";
import { LIMITS } from "../../xlsx/limits";
import type { CellValue, SheetModel, WorkbookModel } from "../../xlsx/model";
import { contentData } from "./content";
import { namesData } from "./names";

/** A formula that the engine is to compute. */
export interface LiveFormula {
  readonly sheet: SheetModel;
  readonly row: number;
  readonly column: number;
  /** As the engine reads it, with its "=". */
  readonly formula: string;
  /** The cells it filled when the file was saved. */
  readonly area: Area;
  /** Whether its result is to be cut to those cells. */
  readonly cut: boolean;
  /** What stands in those of these cells, by address, that its result does not reach. */
  readonly beyond?: ReadonlyMap<string, CellValue>;
}

/** What is to be computed in a workbook. */
export interface Calculation {
  readonly formulas: readonly LiveFormula[];
  /** Cells that hold something else than the file has. */
  readonly changed: Iterable<ChangedCell>;
}

interface ChangedCell {
  readonly sheet: SheetModel;
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
}

/** A workbook's values, and of its formulas those that are live, as the engine takes them: no styles, no sizes. */
export function calculationData(
  book: WorkbookModel,
  { formulas, changed }: Calculation,
): IWorkbookData {
  const bySheet = new Map(
    book.sheets.map((sheet) => [
      sheet,
      { live: [] as LiveFormula[], changed: [] as ChangedCell[] },
    ]),
  );
  for (const formula of formulas) bySheet.get(formula.sheet)?.live.push(formula);
  for (const cell of changed) bySheet.get(cell.sheet)?.changed.push(cell);
  const idOf = (position: number) => `sheet${position + 1}`;
  const size = sizeOf(book, formulas);
  const sheets = [...bySheet].map(([sheet, contents], position): Partial<IWorksheetData> => {
    const cells = cellData(sheet, contents.live, contents.changed);
    return { id: idOf(position), name: sheet.name, ...size, cellData: cells };
  });
  return {
    id: "book",
    name: "",
    appVersion: "",
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: sheets.map((_, position) => idOf(position)),
    sheets: Object.fromEntries(sheets.map((sheet, position) => [idOf(position), sheet])),
    resources: [namesData(book, idOf)],
  };
}

function cellData(
  sheet: SheetModel,
  formulas: readonly LiveFormula[],
  changed: readonly ChangedCell[],
): Record<number, Record<number, ICellData>> {
  const data: Record<number, Record<number, ICellData>> = {};
  const said = new Set(changed.map(({ row, column }) => cellAddress(row, column)));
  // What an array fills is its result, and not in its way.
  const filled = new Set<string>();
  for (const { area } of formulas) {
    if (!isSeveralCells(area)) continue;
    for (const { row, column } of cellsOf(area)) filled.add(cellAddress(row, column));
  }
  for (const { row, cells } of sheet.rows) {
    for (const { column, value, formula } of cells) {
      const content = contentData(value);
      const address = cellAddress(row, column);
      if (!content || said.has(address) || (!formula && filled.has(address))) continue;
      (data[row] ??= {})[column] = content;
    }
  }
  for (const { row, column, value } of changed) {
    const content = contentData(value);
    if (content) (data[row] ??= {})[column] = content;
  }
  for (const { row, column, formula, area, cut, beyond } of formulas) {
    (data[row] ??= {})[column] = { f: cut ? cutTo(formula, area) : formula };
    for (const [address, value] of beyond ?? []) {
      const at = parseCell(address)!;
      const content = contentData(value);
      if (content) (data[at.row] ??= {})[at.column] = content;
    }
  }
  return data;
}

/** The formula's result, as much of it as the cells it fills have room for. */
function cutTo(formula: string, area: Area): string {
  const rows = area.endRow - area.startRow + 1;
  const columns = area.endColumn - area.startColumn + 1;
  return `=TAKE(${formula.slice(1)},${rows},${columns})`;
}

/** Sheets as large as what they hold and what the formulas read, with room to spill. */
function sizeOf({ sheets }: WorkbookModel, formulas: readonly LiveFormula[]) {
  let lastRow = 0;
  let lastColumn = 0;
  const reach = (row: number, column: number) => {
    lastRow = Math.max(lastRow, row);
    lastColumn = Math.max(lastColumn, column);
  };
  for (const { rows } of sheets) {
    for (const { row, cells } of rows) {
      const last = cells.at(-1);
      if (last) reach(row, last.column);
    }
  }
  for (const { area, formula } of formulas) {
    reach(area.endRow, area.endColumn);
    for (const token of tokensOf(formula)) {
      const at = token.kind === "cell" ? parseCell(token.text) : undefined;
      if (at) reach(at.row, at.column);
    }
  }
  return { rowCount: lastRow + LIMITS.room.rows, columnCount: lastColumn + LIMITS.room.columns };
}
