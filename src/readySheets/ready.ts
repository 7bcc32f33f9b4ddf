import type { Area } from "../formula/address";
import type { ListKind, Style } from "./format";

/** Sheets laid out for a workbook of their own. */
export interface ReadyWorkbook {
  readonly name: string;
  /** What lies under every cell, those beyond the sheets' contents too. */
  readonly base: Style;
  /** In order, each under the name of its file. */
  readonly sheets: readonly (readonly [id: string, sheet: ReadySheet])[];
}

/**
 * A sheet laid out, which stands alone: what its file says once is told of each cell, in the file's own words. Rows
 * and columns count from 0, and every colour is "#rrggbb". A host puts this into its own codes.
 */
export interface ReadySheet {
  readonly name: string;
  /** The colour of the sheet's tab. */
  readonly tab?: string;
  readonly gridlines: boolean;
  /** How many rows and columns there are, with room for a coach's own. */
  readonly rowCount: number;
  readonly columnCount: number;
  /** Widths of columns and heights of rows, in pixels. */
  readonly widths: Readonly<Record<number, number>>;
  readonly heights: Readonly<Record<number, number>>;
  readonly merged: readonly Area[];
  /** How many rows and columns stay in sight while the others scroll. */
  readonly frozen?: { readonly rows: number; readonly columns: number };
  readonly cells: ReadyCells;
  /** The looks that cells name. */
  readonly styles: Readonly<Record<string, Style>>;
  /** For a sheet that reads a list: the same without the invented one, to be told where the coach's own stands. */
  readonly own?: OwnList;
}

/** A sheet whose formulas have gaps, "{load}", for the columns of the list that it reads. */
export interface OwnList {
  readonly list: ListKind;
  readonly columns: readonly string[];
  readonly sheet: ReadySheet;
}

/** Cells by row, then by column. */
export type ReadyCells = Readonly<Record<number, Readonly<Record<number, ReadyCell>>>>;

export interface ReadyCell {
  /** With its equals sign, in Excel's spelling of our functions. */
  readonly formula?: string;
  readonly value?: number | string | boolean;
  /** A look, by its name among the sheet's styles. */
  readonly style: string;
}
