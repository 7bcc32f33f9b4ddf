import type { IWorksheetData } from "@univerjs/core";
import { BooleanNumber } from "@univerjs/core";
import type { Corner } from "./pictures";

/** A rectangle in pixels, measured from the sheet's first cell. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A rectangle by the cells its corners lie in. */
export interface Corners {
  readonly from: Corner;
  readonly to: Corner;
}

/** Between the cells of a sheet and pixels: where each column and row of it lies. */
export interface Layout {
  boxOf(corners: Corners): Box;
  cornersOf(box: Box): Corners;
}

/** What the spreadsheet gives a column and a row for which nobody says otherwise. */
const usual = { width: 88, height: 24 };

export function layoutOf(sheet: Partial<IWorksheetData>): Layout {
  const widthOf = (column: number): number => {
    const { w, hd } = sheet.columnData?.[column] ?? {};
    return hd === BooleanNumber.TRUE ? 0 : (w ?? sheet.defaultColumnWidth ?? usual.width);
  };
  const heightOf = (row: number): number => {
    const { h, ah, ia, hd } = sheet.rowData?.[row] ?? {};
    if (hd === BooleanNumber.TRUE) return 0;
    const fitted = ia === BooleanNumber.FALSE ? h : (ah ?? h);
    return fitted ?? sheet.defaultRowHeight ?? usual.height;
  };
  const columns = { count: sheet.columnCount ?? 0, sizeOf: widthOf };
  const rows = { count: sheet.rowCount ?? 0, sizeOf: heightOf };

  return {
    boxOf({ from, to }) {
      const left = startOf(columns, from.column) + from.columnOffset;
      const top = startOf(rows, from.row) + from.rowOffset;
      return {
        left,
        top,
        width: Math.max(0, startOf(columns, to.column) + to.columnOffset - left),
        height: Math.max(0, startOf(rows, to.row) + to.rowOffset - top),
      };
    },
    cornersOf({ left, top, width, height }) {
      const corner = (x: number, y: number): Corner => {
        const column = lineAt(columns, x);
        const row = lineAt(rows, y);
        return {
          column: column.index,
          columnOffset: column.offset,
          row: row.index,
          rowOffset: row.offset,
        };
      };
      return { from: corner(left, top), to: corner(left + width, top + height) };
    },
  };
}

/** The columns or the rows of a sheet. */
interface Lines {
  readonly count: number;
  sizeOf(index: number): number;
}

function startOf({ sizeOf }: Lines, index: number): number {
  let start = 0;
  for (let line = 0; line < index; line++) start += sizeOf(line);
  return start;
}

/** The line at a distance from the first one's start; beyond the last one it is the last. */
function lineAt({ count, sizeOf }: Lines, distance: number): { index: number; offset: number } {
  let index = 0;
  let offset = Math.max(0, distance);
  while (index < count - 1 && offset >= sizeOf(index)) offset -= sizeOf(index++);
  return { index, offset: Math.min(offset, sizeOf(index)) };
}

/**
 * A file holds a picture that is turned more to its side than upright by the rectangle of its quarter
 * turn; from one of the two rectangles the other.
 */
export function quarterTurned(box: Box, angle: number): Box {
  const turn = ((angle % 180) + 180) % 180;
  if (turn < 45 || turn >= 135) return box;
  const { left, top, width, height } = box;
  return {
    left: left + (width - height) / 2,
    top: top + (height - width) / 2,
    width: height,
    height: width,
  };
}
