import type { ICellData, IColumnData, IFreeze, IRowData, IWorksheetData } from "@univerjs/core";
import { BooleanNumber } from "@univerjs/core";
import { lastColumn, lastRow, parseArea } from "../../formula/address";
import type { Package, XmlElement } from "../package";
import { childOf, childrenOf, flagOf, numberOf, xmlAt } from "../package";
import { pixelsOfPoints, widthInPixels, widthOfCharacters } from "../units";
import type { Surroundings } from "./cells";
import { cellReader } from "./cells";
import type { ColorOf } from "./colors";
import type { Drawn } from "./pictures";
import { reachOf } from "./pictures";
import type { ListedSheet } from "./sheets";

/** Room for rows and columns below and beside what a sheet holds. */
const room = { rows: 100, columns: 10 };
const smallest = { rows: 200, columns: 26 };

/** Reads one worksheet. */
export function readSheet(
  file: Package,
  { id, name, path, hidden }: ListedSheet,
  surroundings: Surroundings,
  colorOf: ColorOf,
  drawn: readonly Drawn[],
): Partial<IWorksheetData> {
  const cellData: Record<number, Record<number, ICellData>> = {};
  const rowData: Record<number, Partial<IRowData>> = {};
  const used = { rows: 0, columns: 0 };
  const readRow = cellReader(name, surroundings);

  const sheet = xmlAt(file, path, "row", (element) => {
    const { row, cells } = readRow(element);
    const look = rowLook(element);
    if (Object.keys(look).length > 0) rowData[row] = look;
    if (cells.length === 0) return;
    cellData[row] = Object.fromEntries(cells.map(({ column, content }) => [column, content]));
    used.rows = Math.max(used.rows, row + 1);
    used.columns = Math.max(used.columns, ...cells.map(({ column }) => column + 1));
  });

  const format = childOf(sheet, "sheetFormatPr");
  const height = format && numberOf(format, "defaultRowHeight");
  const columns = readColumns(childOf(sheet, "cols"));
  const sizes = {
    defaultColumnWidth: defaultWidth(format),
    ...(height && { defaultRowHeight: Math.round(pixelsOfPoints(height)) }),
    rowData,
  };
  const reach = reachOf(drawn, { ...sizes, columnData: columns });
  const rows = Math.max(used.rows, reach.rows) + room.rows;
  const rowCount = Math.min(Math.max(rows, smallest.rows), lastRow + 1);
  const columnsUsed = Math.max(used.columns, reach.columns) + room.columns;
  const columnCount = Math.min(Math.max(columnsUsed, smallest.columns), lastColumn + 1);
  const view = childOf(childOf(sheet, "sheetViews"), "sheetView");
  const tab = colorOf(childOf(childOf(sheet, "sheetPr"), "tabColor"));
  const freeze = freezeOf(childOf(view, "pane"));
  return {
    id,
    name,
    tabColor: tab ?? "",
    hidden: flag(hidden),
    rowCount,
    columnCount,
    ...sizes,
    cellData,
    columnData: Object.fromEntries(
      Object.entries(columns).filter(([column]) => Number(column) < columnCount),
    ),
    mergeData: childrenOf(childOf(sheet, "mergeCells"), "mergeCell").flatMap(
      ({ attributes }) => parseArea(attributes.ref ?? "") ?? [],
    ),
    showGridlines: flag(!view || flagOf(view, "showGridLines", true)),
    rightToLeft: flag(view !== undefined && flagOf(view, "rightToLeft")),
    ...(freeze && { freeze }),
  };
}

function rowLook(element: XmlElement): Partial<IRowData> {
  const points = numberOf(element, "ht");
  const pixels = points === undefined ? undefined : pixelsOfPoints(points);
  return {
    ...(pixels !== undefined &&
      (flagOf(element, "customHeight")
        ? { h: pixels, ia: BooleanNumber.FALSE }
        : { h: pixels, ah: pixels, ia: BooleanNumber.TRUE })),
    ...(flagOf(element, "hidden") && { hd: BooleanNumber.TRUE }),
    ...(flagOf(element, "customFormat") && { s: element.attributes.s ?? "0" }),
  };
}

function readColumns(columns: XmlElement | undefined) {
  const read: Record<number, Partial<IColumnData>> = {};
  for (const element of childrenOf(columns, "col")) {
    const width = numberOf(element, "width");
    const look: Partial<IColumnData> = {
      ...(width !== undefined && { w: widthInPixels(width) }),
      ...(flagOf(element, "hidden") && { hd: BooleanNumber.TRUE }),
      ...(element.attributes.style !== undefined && { s: element.attributes.style }),
    };
    const first = (numberOf(element, "min") ?? 1) - 1;
    const last = Math.min(numberOf(element, "max") ?? first + 1, lastColumn + 1) - 1;
    for (let column = first; column <= last; column++) read[column] = look;
  }
  return read;
}

function defaultWidth(format: XmlElement | undefined): number {
  const written = format && numberOf(format, "defaultColWidth");
  if (written) return widthInPixels(written);
  const characters = (format && numberOf(format, "baseColWidth")) ?? 8;
  // A width that nobody chose is rounded up, so that columns scroll in steps of eight pixels.
  return Math.ceil(widthOfCharacters(characters) / 8) * 8;
}

function freezeOf(pane: XmlElement | undefined): IFreeze | undefined {
  if (!pane || !(pane.attributes.state ?? "").startsWith("frozen")) return undefined;
  const xSplit = numberOf(pane, "xSplit") ?? 0;
  const ySplit = numberOf(pane, "ySplit") ?? 0;
  return { xSplit, ySplit, startRow: ySplit, startColumn: xSplit };
}

function flag(value: boolean): BooleanNumber {
  return value ? BooleanNumber.TRUE : BooleanNumber.FALSE;
}
