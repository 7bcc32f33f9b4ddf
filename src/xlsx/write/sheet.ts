import { areaAddress, cellAddress, isSeveralCells } from "../../formula/address";
import type { ColumnModel, RowModel, SheetModel } from "../model";
import { writeXml } from "../package";
import { pointsOfPixels, widthInDigits } from "../units";
import type { SharedStrings } from "./cells";
import { writeCell } from "./cells";
import { writeFilter } from "./filter";
import { MAIN_NAMESPACE, RELATIONSHIP_NAMESPACE } from "./namespaces";
import { argb } from "./styles";

/** The height in pixels that programs give a row on their own. */
const USUAL_HEIGHT = 20;

/** The number under which the file lists one of the workbook's styles. */
export type LookOf = (style: number | undefined) => number;

/** Writes one worksheet's part; `drawing` is the relationship that leads to its pictures. */
export function writeSheet(
  sheet: SheetModel,
  lookOf: LookOf,
  strings: SharedStrings,
  { selected, drawing }: { readonly selected: boolean; readonly drawing?: string },
): string {
  const spilled = spilledCells(sheet);
  const merges = sheet.merges.filter(isSeveralCells);
  const namespaces = {
    xmlns: MAIN_NAMESPACE,
    ...(drawing && { "xmlns:r": RELATIONSHIP_NAMESPACE }),
  };
  return writeXml("worksheet", namespaces, [
    writeProperties(sheet),
    writeView(sheet, selected),
    writeFormat(sheet),
    writeColumns(sheet.columns, lookOf),
    writeXml(
      "sheetData",
      {},
      sheet.rows.map((row) => writeRow(row, spilled, lookOf, strings)),
    ),
    writeFilter(sheet.filter),
    merges.length === 0
      ? ""
      : writeXml(
          "mergeCells",
          { count: merges.length },
          merges.map((area) => writeXml("mergeCell", { ref: areaAddress(area) })),
        ),
    writeXml("pageMargins", {
      ...{ left: 0.5, right: 0.5, top: 0.6, bottom: 0.6, header: 0.3, footer: 0.3 },
    }),
    writeXml("pageSetup", { orientation: orientationOf(sheet), fitToHeight: 0 }),
    drawing ? writeXml("drawing", { "r:id": drawing }) : "",
  ]);
}

/** The cells over which some formula's result spilled. */
function spilledCells({ rows }: SheetModel): ReadonlySet<string> {
  const spilled = new Set<string>();
  for (const { cells } of rows) {
    for (const { formula } of cells) {
      if (!formula || formula.kind === "one cell") continue;
      const { startRow, startColumn, endRow, endColumn } = formula.area;
      for (let row = startRow; row <= endRow; row++) {
        for (let column = startColumn; column <= endColumn; column++) {
          spilled.add(cellAddress(row, column));
        }
      }
    }
  }
  return spilled;
}

function writeRow(
  row: RowModel,
  spilled: ReadonlySet<string>,
  lookOf: LookOf,
  strings: SharedStrings,
): string {
  const written = row.cells.map((cell) =>
    writeCell(
      cell,
      lookOf(cell.style),
      !cell.formula && spilled.has(cellAddress(cell.row, cell.column)),
      strings,
    ),
  );
  const attributes = rowAttributes(row, lookOf);
  const empty = written.join("") === "" && Object.keys(attributes).length === 0;
  return empty ? "" : writeXml("row", { r: row.row + 1, ...attributes }, written);
}

function rowAttributes(
  { height, heightIsChosen, hidden, style }: RowModel,
  lookOf: LookOf,
): Record<string, number> {
  const look = lookOf(style);
  return {
    ...(look > 0 && { s: look, customFormat: 1 }),
    ...(height !== undefined && { ht: pointsOfPixels(height) }),
    ...(hidden && { hidden: 1 }),
    ...(height !== undefined && heightIsChosen && { customHeight: 1 }),
  };
}

function writeProperties({ tab }: SheetModel): string {
  const rgb = argb(tab);
  return writeXml("sheetPr", {}, [
    rgb ? writeXml("tabColor", { rgb }) : "",
    writeXml("pageSetUpPr", { fitToPage: 1 }),
  ]);
}

function writeView(sheet: SheetModel, selected: boolean): string {
  const attributes = {
    showGridLines: sheet.gridlines ? undefined : 0,
    rightToLeft: sheet.rightToLeft ? 1 : undefined,
    tabSelected: selected ? 1 : undefined,
    workbookViewId: 0,
  };
  const { columns = 0, rows = 0 } = sheet.freeze ?? {};
  if (columns <= 0 && rows <= 0) {
    return writeXml("sheetViews", {}, writeXml("sheetView", attributes));
  }
  const active = columns > 0 ? (rows > 0 ? "bottomRight" : "topRight") : "bottomLeft";
  const pane = {
    xSplit: columns > 0 ? columns : undefined,
    ySplit: rows > 0 ? rows : undefined,
    topLeftCell: cellAddress(Math.max(0, rows), Math.max(0, columns)),
    activePane: active,
    state: "frozen",
  };
  const inside = [writeXml("pane", pane), writeXml("selection", { pane: active })];
  return writeXml("sheetViews", {}, writeXml("sheetView", attributes, inside));
}

function writeFormat({ usualWidth, usualHeight: height = USUAL_HEIGHT }: SheetModel): string {
  return writeXml("sheetFormatPr", {
    defaultColWidth: usualWidth === undefined ? undefined : widthInDigits(usualWidth),
    defaultRowHeight: pointsOfPixels(height),
    customHeight: height === USUAL_HEIGHT ? undefined : 1,
  });
}

function writeColumns(columns: ReadonlyMap<number, ColumnModel>, lookOf: LookOf): string {
  const inOrder = [...columns].sort(([one], [other]) => one - other);
  const written = inOrder.flatMap(([column, { width, hidden, style }]) => {
    const look = lookOf(style);
    if (width === undefined && !hidden && look === 0) return [];
    const attributes = {
      min: column + 1,
      max: column + 1,
      width: widthInDigits(width ?? 64),
      style: look > 0 ? look : undefined,
      hidden: hidden ? 1 : undefined,
      customWidth: 1,
    };
    return writeXml("col", attributes);
  });
  return written.length > 0 ? writeXml("cols", {}, written) : "";
}

/** A sheet that is broader than a page is high is printed lying down. */
function orientationOf({ rows, columns, usualWidth = 64 }: SheetModel): "landscape" | "portrait" {
  const last = rows.reduce((most, { cells }) => Math.max(most, cells.at(-1)?.column ?? 0), 0);
  let width = 0;
  for (let column = 0; column <= last; column++) width += columns.get(column)?.width ?? usualWidth;
  return width > 900 ? "landscape" : "portrait";
}
