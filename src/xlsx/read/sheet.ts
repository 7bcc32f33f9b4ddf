import { LAST_COLUMN, parseArea } from "../../formula/address";
import { layoutOf } from "../layout";
import type { ColumnModel, FreezeModel, SheetModel } from "../model";
import type { Package, XmlElement } from "../package";
import { childOf, childrenOf, flagOf, numberOf, xmlAt } from "../package";
import { pixelsOfPoints, widthInPixels, widthOfCharacters } from "../units";
import type { ColorOf } from "./colors";
import { find, inOrder } from "./numbered";
import { drawnOn, readPictures } from "./pictures";
import type { Place, ReadCell, ReadRow } from "./rows";
import { rowReader } from "./rows";
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
}

/** Reads one worksheet. */
export function readSheet(
  file: Package,
  { name, path, hidden, position, number }: ListedSheet,
  { strings, from1904, colorOf }: Surroundings,
): ReadSheet {
  const read: ReadRow[] = [];
  const readRow = rowReader(valueReader(name, strings, from1904));
  const root = xmlAt(file, path, "sheetData/row", (element) => read.push(readRow(element)));
  const rows = inOrder(read, (row) => row.row);
  const format = childOf(root, "sheetFormatPr");
  const height = format && numberOf(format, "defaultRowHeight");
  const view = childOf(childOf(root, "sheetViews"), "sheetView");
  const tab = colorOf(childOf(childOf(root, "sheetPr"), "tabColor"));
  const freeze = freezeOf(childOf(view, "pane"));
  const sizes = {
    usualWidth: usualWidthOf(format),
    ...(height && { usualHeight: Math.round(pixelsOfPoints(height)) }),
    columns: readColumns(childOf(root, "cols")),
    rows,
  };
  const drawn = drawnOn(file, path);
  return {
    ...{ name, path, hidden, position, number },
    ...(tab && { tab }),
    gridlines: !view || flagOf(view, "showGridLines", true),
    rightToLeft: view !== undefined && flagOf(view, "rightToLeft"),
    ...(freeze && { freeze }),
    merges: childrenOf(childOf(root, "mergeCells"), "mergeCell").flatMap(
      ({ attributes }) => parseArea(attributes.ref ?? "") ?? [],
    ),
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

function readColumns(columns: XmlElement | undefined): Map<number, ColumnModel> {
  const read = new Map<number, ColumnModel>();
  for (const element of childrenOf(columns, "col")) {
    const width = numberOf(element, "width");
    const style = numberOf(element, "style");
    const look: ColumnModel = {
      ...(width !== undefined && { width: widthInPixels(width) }),
      ...(flagOf(element, "hidden") && { hidden: true }),
      ...(style !== undefined && { style }),
    };
    const first = (numberOf(element, "min") ?? 1) - 1;
    const last = Math.min(numberOf(element, "max") ?? first + 1, LAST_COLUMN + 1) - 1;
    for (let column = first; column <= last; column++) read.set(column, look);
  }
  return read;
}

function usualWidthOf(format: XmlElement | undefined): number {
  const written = format && numberOf(format, "defaultColWidth");
  if (written) return widthInPixels(written);
  const characters = (format && numberOf(format, "baseColWidth")) ?? 8;
  // A width that nobody chose is rounded up, so that columns scroll in steps of eight pixels.
  return Math.ceil(widthOfCharacters(characters) / 8) * 8;
}

function freezeOf(pane: XmlElement | undefined): FreezeModel | undefined {
  if (!pane || !(pane.attributes.state ?? "").startsWith("frozen")) return undefined;
  return { rows: numberOf(pane, "ySplit") ?? 0, columns: numberOf(pane, "xSplit") ?? 0 };
}
