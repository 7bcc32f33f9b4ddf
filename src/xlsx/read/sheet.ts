import { LAST_COLUMN, LAST_ROW, parseArea, quoteSheet } from "../../formula/address";
import { layoutOf } from "../layout";
import { LIMITS } from "../limits";
import type { ColumnModel, FreezeModel, SheetModel } from "../model";
import type { Package, XmlElement } from "../package";
import { childOf, childrenOf, flagOf, numberOf, xmlAt } from "../package";
import { pixelsOfPoints, widthInPixels, widthOfCharacters } from "../units";
import { lineNumber, refuse, within, type Tally } from "./bounds";
import type { ColorOf } from "./colors";
import { readFilter } from "./filter";
import { find, inOrder } from "./numbered";
import { drawnOn, readPictures } from "./pictures";
import type { Place, ReadCell, ReadRow } from "./rows";
import { HIGHEST, rowReader } from "./rows";
import type { ListedSheet } from "./sheets";
import { valueReader } from "./values";

/** A worksheet read from a file, with where things stand in its part's text. */
export interface ReadSheet extends SheetModel {
  /** The path of its part. */
  readonly path: string;
  /** Its place among all of the file's sheets, those that hold a chart included. */
  readonly position: number;
  /** The number by which other parts of the file know it. */
  readonly number: number;
  readonly rows: readonly ReadRow[];
  /** The prefix of its elements with the colon, for programs that use one. */
  readonly prefix: string;
  /** The element around the rows. */
  readonly data: Place;
  /** Where the sheet's extent is said, if it is. */
  readonly dimension: Place | undefined;
  /** The cell at a place, if the file has it. */
  cellAt(row: number, column: number): ReadCell | undefined;
}

/** What a sheet's cells need to know of the workbook around them. */
export interface Surroundings {
  readonly strings: readonly string[];
  readonly from1904: boolean;
  readonly colorOf: ColorOf;
  readonly tally: Tally;
}

/** Reads one worksheet. */
export function readSheet(
  file: Package,
  { name, path, hidden, position, number }: ListedSheet,
  { strings, from1904, colorOf, tally }: Surroundings,
): ReadSheet {
  const read: ReadRow[] = [];
  const readRow = rowReader(name, valueReader(name, strings, from1904), tally);
  const root = xmlAt(file, path, "sheetData/row", (element) => read.push(readRow(element)));
  const rows = inOrder(read, (row) => row.row);
  const format = childOf(root, "sheetFormatPr");
  const height = format && numberOf(format, "defaultRowHeight");
  const view = childOf(childOf(root, "sheetViews"), "sheetView");
  const tab = colorOf(childOf(childOf(root, "sheetPr"), "tabColor"));
  const filter = readFilter(childOf(root, "autoFilter"));
  const freeze = freezeOf(childOf(view, "pane"));
  const sizes = {
    usualWidth: usualWidthOf(format),
    ...(height && { usualHeight: Math.round(pixelsOfPoints(within(0, height, HIGHEST))) }),
    columns: readColumns(name, childOf(root, "cols")),
    rows,
  };
  const drawn = drawnOn(file, path);
  return {
    ...{ name, path, hidden, position, number },
    ...(tab && { tab }),
    gridlines: !view || flagOf(view, "showGridLines", true),
    rightToLeft: view !== undefined && flagOf(view, "rightToLeft"),
    ...(freeze && { freeze }),
    merges: childrenOf(childOf(root, "mergeCells"), "mergeCell").flatMap(({ attributes }) => {
      const area = parseArea(attributes.ref ?? "");
      if (area) tally.merge(name, area);
      return area ?? [];
    }),
    ...(filter && { filter }),
    ...sizes,
    pictures: drawn.length > 0 ? readPictures(drawn, layoutOf(sizes)) : [],
    prefix: root.prefix,
    data: childOf(root, "sheetData") ?? {
      ...root,
      start: root.contentStart,
      end: root.contentStart,
    },
    dimension: childOf(root, "dimension"),
    cellAt: finderOf(rows),
  };
}

function finderOf(rows: readonly ReadRow[]): ReadSheet["cellAt"] {
  return (row, column) => {
    const found = find(rows, row, (each) => each.row);
    return found && find(found.cells, column, (each) => each.column);
  };
}

function readColumns(sheet: string, columns: XmlElement | undefined): Map<number, ColumnModel> {
  const read = new Map<number, ColumnModel>();
  const place = () => `${quoteSheet(sheet)}:`;
  let said = 0;
  for (const element of childrenOf(columns, "col")) {
    const width = numberOf(element, "width");
    const style = numberOf(element, "style");
    const look: ColumnModel = {
      ...(width !== undefined && { width: widthInPixels(within(0, width, WIDEST)) }),
      ...(flagOf(element, "hidden") && { hidden: true }),
      ...(style !== undefined && { style }),
    };
    const { min = "1", max = min } = element.attributes;
    const first = lineNumber(min, LAST_COLUMN, `${place()} the file sizes a column`) - 1;
    // Programs disagree on how many columns there are.
    const last = Math.min(Number(max) || first, LAST_COLUMN + 1) - 1;
    if (last < first) refuse(place, `the file sizes columns from ${first + 1} to ${last + 1}`);
    said += last - first + 1;
    if (said > LIMITS.columnWidths) refuse(place, "the file sizes its columns many times over");
    for (let column = first; column <= last; column++) read.set(column, look);
  }
  return read;
}

function usualWidthOf(format: XmlElement | undefined): number {
  const written = format && numberOf(format, "defaultColWidth");
  if (written) return widthInPixels(within(0, written, WIDEST));
  const characters = within(0, (format && numberOf(format, "baseColWidth")) ?? 8, WIDEST);
  // A width that nobody chose is rounded up, so that columns scroll in steps of eight pixels.
  return Math.ceil(widthOfCharacters(characters) / 8) * 8;
}

function freezeOf(pane: XmlElement | undefined): FreezeModel | undefined {
  if (!pane || !(pane.attributes.state ?? "").startsWith("frozen")) return undefined;
  const lines = (name: string, last: number) =>
    within(0, Math.trunc(numberOf(pane, name) ?? 0), last);
  return { rows: lines("ySplit", LAST_ROW), columns: lines("xSplit", LAST_COLUMN) };
}

/** In characters; no column of a sheet is wider. */
const WIDEST = 255;
