import type { Area } from "../../formula/address";
import type { CellModel } from "./cell";
import type { FilterModel } from "./filter";
import type { PictureModel } from "./picture";

/** What is said of a column: its width in pixels, and the style of its cells that have none. */
export interface ColumnModel {
  readonly width?: number;
  readonly hidden?: boolean;
  readonly style?: number;
}

export interface RowModel {
  readonly row: number;
  /** In the order of their columns. */
  readonly cells: readonly CellModel[];
  /** In pixels. */
  readonly height?: number;
  /** Whether somebody chose the height; otherwise it follows from what is in the row. */
  readonly heightIsChosen?: boolean;
  readonly hidden?: boolean;
  readonly style?: number;
}

/** How many rows and columns stay in sight while the others scroll. */
export interface FreezeModel {
  readonly rows: number;
  readonly columns: number;
}

export interface SheetModel {
  readonly name: string;
  readonly hidden: boolean;
  /** The colour of its tab, "#rrggbb". */
  readonly tab?: string;
  readonly gridlines: boolean;
  readonly rightToLeft: boolean;
  readonly freeze?: FreezeModel;
  readonly merges: readonly Area[];
  readonly filter?: FilterModel;
  /** In pixels, of columns and rows of which nothing else is said. */
  readonly usualWidth?: number;
  readonly usualHeight?: number;
  /** By their number. */
  readonly columns: ReadonlyMap<number, ColumnModel>;
  /** Those that hold something or are somehow special, in their order. */
  readonly rows: readonly RowModel[];
  /** The last one lies on top. */
  readonly pictures: readonly PictureModel[];
}
