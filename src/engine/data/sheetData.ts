import type { ICellData, IColumnData, IFreeze, IRowData, IWorksheetData } from "@univerjs/core";
import { BooleanNumber } from "@univerjs/core";
import type { Area } from "../../formula/address";
import { contains, isSeveralCells, LAST_COLUMN, LAST_ROW } from "../../formula/address";
import { plainFormula } from "../../formula/plain";
import { DAYS_FROM_1900_TO_1904 } from "../../xlsx/days";
import type { CellModel, CellValue, RowModel, SheetModel, WorkbookModel } from "../../xlsx/model";
import { isFiltered } from "../../xlsx/model";
import { isDateFormat } from "../../xlsx/numberFormats";
import { contentData } from "./content";

/** Room for rows and columns below and beside what a sheet holds. */
const ROOM = { rows: 100, columns: 10 };
const SMALLEST = { rows: 200, columns: 26 };

/** A sheet as the page shows it, looks and all. */
export function sheetData(
  id: string,
  sheet: SheetModel,
  book: WorkbookModel,
): Partial<IWorksheetData> {
  const { rowCount, columnCount } = extentOf(sheet);
  const rowData: Record<number, Partial<IRowData>> = {};
  for (const row of sheet.rows) {
    // What a filter hides is shown again when it is told to, so the filter alone keeps it.
    const byFilter = sheet.filter && isFiltered(sheet.filter, row.row);
    const look = rowLook(byFilter ? { ...row, hidden: false } : row);
    if (Object.keys(look).length > 0) rowData[row.row] = look;
  }
  const columns = [...sheet.columns].filter(([column]) => column < columnCount);
  const { usualWidth, usualHeight, freeze } = sheet;
  return {
    id,
    name: sheet.name,
    tabColor: sheet.tab ?? "",
    hidden: flag(sheet.hidden),
    rowCount,
    columnCount,
    ...(usualWidth !== undefined && { defaultColumnWidth: usualWidth }),
    ...(usualHeight !== undefined && { defaultRowHeight: usualHeight }),
    rowData,
    cellData: cellData(sheet, book),
    columnData: Object.fromEntries(
      columns.map(([column, { width, hidden, style }]): [number, Partial<IColumnData>] => [
        column,
        {
          ...(width !== undefined && { w: width }),
          ...(hidden && { hd: BooleanNumber.TRUE }),
          ...(style !== undefined && { s: String(style) }),
        },
      ]),
    ),
    mergeData: [...sheet.merges],
    showGridlines: flag(sheet.gridlines),
    rightToLeft: flag(sheet.rightToLeft),
    ...(freeze && { freeze: freezeData(freeze) }),
  };
}

/** As many rows and columns as hold anything, pictures included, with room beside them. */
function extentOf({ rows, pictures }: SheetModel) {
  let lastUsedRow = -1;
  let lastUsedColumn = -1;
  for (const { row, cells } of rows) {
    const last = cells.at(-1);
    if (!last) continue;
    lastUsedRow = Math.max(lastUsedRow, row);
    lastUsedColumn = Math.max(lastUsedColumn, last.column);
  }
  for (const { to } of pictures.map(({ corners }) => corners)) {
    lastUsedRow = Math.max(lastUsedRow, to.row);
    lastUsedColumn = Math.max(lastUsedColumn, to.column);
  }
  const within = (least: number, wanted: number, most: number) =>
    Math.min(Math.max(least, wanted), most);
  return {
    rowCount: within(SMALLEST.rows, lastUsedRow + 1 + ROOM.rows, LAST_ROW + 1),
    columnCount: within(SMALLEST.columns, lastUsedColumn + 1 + ROOM.columns, LAST_COLUMN + 1),
  };
}

function rowLook({ height, heightIsChosen, hidden, style }: RowModel): Partial<IRowData> {
  return {
    ...(height !== undefined &&
      (heightIsChosen
        ? { h: height, ia: BooleanNumber.FALSE }
        : { h: height, ah: height, ia: BooleanNumber.TRUE })),
    ...(hidden && { hd: BooleanNumber.TRUE }),
    ...(style !== undefined && { s: String(style) }),
  };
}

function cellData(
  sheet: SheetModel,
  book: WorkbookModel,
): Record<number, Record<number, ICellData>> {
  const data: Record<number, Record<number, ICellData>> = {};
  const arrays: Area[] = [];
  for (const { row, cells } of sheet.rows) {
    if (cells.length === 0) continue;
    const ofRow: Record<number, ICellData> = (data[row] = {});
    for (const cell of cells) ofRow[cell.column] = oneCell(cell);
  }
  return data;

  function oneCell(cell: CellModel): ICellData {
    const { row, column, style, formula } = cell;
    const content: ICellData = style < book.styles.length ? { s: String(style) } : {};
    // A what-if table has no formula in the cells that it fills, only their values.
    if (formula && formula.kind !== "data table") {
      if (isSeveralCells(formula.area)) arrays.push(formula.area);
      content.f = plainFormula(formula.text, book.tables, { sheet: sheet.name, row, column });
    } else if (arrays.some((area) => contains(area, row, column))) return content;
    return Object.assign(content, contentData(onItsDay(cell, book)));
  }
}

/** The page counts days from 1900, so in a workbook that does from 1904 dates get the other count. */
function onItsDay({ value, style }: CellModel, { from1904, styles }: WorkbookModel): CellValue {
  if (!from1904 || typeof value !== "number") return value;
  const format = styles[style]?.format;
  return format && isDateFormat(format) ? value + DAYS_FROM_1900_TO_1904 : value;
}

function freezeData({ rows, columns }: NonNullable<SheetModel["freeze"]>): IFreeze {
  return { xSplit: columns, ySplit: rows, startRow: rows, startColumn: columns };
}

function flag(value: boolean): BooleanNumber {
  return value ? BooleanNumber.TRUE : BooleanNumber.FALSE;
}
