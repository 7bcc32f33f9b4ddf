import type { Grid } from "../../cells";
import { areaAddress, cellAddress, contains, parseArea, parseCell } from "../../formula/address";
import { lookOf } from "./look";
import type { Spot } from "./place";

/** A result with its place and its looks, as a host writes it into a sheet. */
export interface Insertion {
  readonly sheet: string;
  /** The cell that the formula goes into; what it gives spills from there. */
  readonly address: string;
  readonly formula: string;
  /** The cells of headings and what goes into each; those without a text are headings of the result's own. */
  readonly headings: readonly { readonly address: string; readonly text?: string }[];
  readonly formats: readonly { readonly address: string; readonly format: string }[];
  /** How wide columns must be at least, in characters, by the column's number from 0. */
  readonly widths: Readonly<Record<number, number>>;
}

/** The number format of each cell of a result, by its row and column from 0; a cell without one has the usual. */
export function formatsIn(insertion: Insertion | undefined) {
  const corner = insertion && parseCell(insertion.address);
  const formats = insertion?.formats.map(({ address, format }) => ({
    format,
    area: parseArea(address),
  }));
  return (down: number, right: number): string | undefined => {
    if (!corner) return undefined;
    const [row, column] = [corner.row + down, corner.column + right];
    return formats?.find(({ area }) => area && contains(area, row, column))?.format;
  };
}

/** A result row by row: its headings above it, each column in its own format. */
export function columnInsertion(
  spot: Spot,
  formula: string,
  grid: Grid,
  labels: readonly string[],
): Insertion {
  const headings = spot.hasHeadingRow ? labels : [];
  const columns = spanOf(spot.columns).map((index) => ({
    index,
    label: labels[index] ?? "",
    contents: columnOf(grid, index),
    first: spot.row,
  }));
  return {
    ...start(spot, formula),
    headings: headings.map((text, index) => ({
      address: cellAddress(spot.row - 1, spot.column + index),
      text,
    })),
    ...looksOf(spot, columns),
  };
}

/** A table that brings its own row of headings, or a report of labels with their values. */
export function tableInsertion(
  spot: Spot,
  formula: string,
  grid: Grid,
  parts: readonly string[],
): Insertion {
  const [top = []] = grid;
  const isReport = spot.columns === 2 && grid.every(([label]) => parts.includes(String(label)));
  if (isReport) {
    const cells = grid.map(([label, ...values]) => {
      return { label: String(label), ...lookOf(String(label), values) };
    });
    return {
      ...start(spot, formula),
      headings: [],
      formats: cells.flatMap(({ format }, row) => {
        const address = cellAddress(spot.row + row, spot.column + 1);
        return format === undefined ? [] : [{ address, format }];
      }),
      widths: {
        [spot.column]: Math.max(...cells.map(({ label }) => label.length)),
        [spot.column + 1]: Math.max(...cells.map(({ width }) => width)),
      },
    };
  }
  const hasHeadings =
    grid.length > 1 && top.every((cell) => typeof cell === "string" && cell !== "");
  const columns = spanOf(spot.columns).map((index) => ({
    index,
    label: hasHeadings ? String(top[index]) : "",
    contents: columnOf(hasHeadings ? grid.slice(1) : grid, index),
    first: spot.row + (hasHeadings ? 1 : 0),
  }));
  return {
    ...start(spot, formula),
    headings: hasHeadings
      ? columns.map(({ index }) => ({ address: cellAddress(spot.row, spot.column + index) }))
      : [],
    ...looksOf(spot, columns),
  };
}

interface ResultColumn {
  readonly index: number;
  readonly label: string;
  readonly contents: Grid[number];
  /** The row of the first of its contents. */
  readonly first: number;
}

function looksOf({ column: left, row, rows }: Spot, columns: readonly ResultColumn[]) {
  const looks = columns.map((column) => ({ ...column, ...lookOf(column.label, column.contents) }));
  return {
    formats: looks.flatMap(({ index, first, format }) => {
      const [startColumn, endColumn] = [left + index, left + index];
      const address = areaAddress({
        startRow: first,
        startColumn,
        endRow: row + rows - 1,
        endColumn,
      });
      return format === undefined ? [] : [{ address, format }];
    }),
    widths: Object.fromEntries(
      looks.map(({ index, label, width }) => [left + index, Math.max(label.length, width)]),
    ),
  };
}

const start = ({ sheet, row, column }: Spot, formula: string) => ({
  sheet,
  address: cellAddress(row, column),
  formula,
});

/** The cells of one column of a result. */
const columnOf = (grid: Grid, index: number) => grid.flatMap((row) => row.slice(index, index + 1));

const spanOf = (count: number) => Array.from({ length: count }, (_, index) => index);
