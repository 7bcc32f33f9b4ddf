import { LAST_COLUMN, LAST_ROW } from "../formula/address";
import type { Corner, Corners } from "./model";

/** A rectangle in pixels, measured from the sheet's first cell. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Between the cells of a sheet and pixels: where each column and row of it lies. */
export interface Layout {
  boxOf(corners: Corners): Box;
  cornersOf(box: Box): Corners;
}

/** How large the columns and rows of a sheet are, in pixels. */
export interface Sizes {
  readonly usualWidth?: number;
  readonly usualHeight?: number;
  readonly columns: ReadonlyMap<number, { readonly width?: number; readonly hidden?: boolean }>;
  readonly rows: Iterable<{
    readonly row: number;
    readonly height?: number;
    readonly hidden?: boolean;
  }>;
}

/** What the spreadsheet gives a column and a row for which nobody says otherwise. */
const USUAL = { width: 88, height: 24 };

export function layoutOf({ usualWidth, usualHeight, ...sizes }: Sizes): Layout {
  const columns = linesOf(
    [...sizes.columns].map(([index, { width, hidden }]) => ({ index, size: width, hidden })),
    usualWidth ?? USUAL.width,
    LAST_COLUMN,
  );
  const special: Line[] = [];
  for (const { row, height, hidden } of sizes.rows) {
    if (height !== undefined || hidden) special.push({ index: row, size: height, hidden });
  }
  const rows = linesOf(special, usualHeight ?? USUAL.height, LAST_ROW);

  return {
    boxOf({ from, to }) {
      const left = columns.startOf(from.column) + from.columnOffset;
      const top = rows.startOf(from.row) + from.rowOffset;
      return {
        left,
        top,
        width: Math.max(0, columns.startOf(to.column) + to.columnOffset - left),
        height: Math.max(0, rows.startOf(to.row) + to.rowOffset - top),
      };
    },
    cornersOf({ left, top, width, height }) {
      const corner = (x: number, y: number): Corner => {
        const column = columns.at(x);
        const row = rows.at(y);
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

/** A column or a row of which something is said. */
interface Line {
  readonly index: number;
  readonly size?: number;
  readonly hidden?: boolean;
}

/** The columns or the rows of a sheet. */
interface Lines {
  /** How far a line is from the start of the first one. */
  startOf(index: number): number;
  /** The line at a distance from there, and how far into it that is. */
  at(distance: number): { index: number; offset: number };
}

/**
 * Lines of a usual size, but for those of which something else is said. A sheet has a million rows, so
 * only the latter are gone through.
 */
function linesOf(said: readonly Line[], usualSize: number, last: number): Lines {
  const sized = said
    .map(({ index, size, hidden }) => ({ index, size: hidden ? 0 : (size ?? usualSize) }))
    .sort((a, b) => a.index - b.index);
  return {
    startOf(index) {
      let start = index * usualSize;
      for (const line of sized) {
        if (line.index >= index) break;
        start += line.size - usualSize;
      }
      return start;
    },
    at(distance) {
      let next = 0;
      let rest = Math.max(0, distance);
      for (const { index, size } of sized) {
        const between = (index - next) * usualSize;
        if (rest < between) break;
        if (rest < between + size) return { index, offset: rest - between };
        rest -= between + size;
        next = index + 1;
      }
      const further = usualSize > 0 ? Math.floor(rest / usualSize) : 0;
      const index = next + further;
      return index <= last
        ? { index, offset: rest - further * usualSize }
        : { index: last, offset: usualSize };
    },
  };
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
