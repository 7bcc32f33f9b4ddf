/**
 * The readable language of the demo's sheets and the pane's: spreadsheets as JSON that a person can read, compare
 * and edit.
 *
 * `workbook.json` lists the sheets and says which file names their colours and styles; each sheet is a file of its
 * own in `sheets/`, and long logs are CSV files that a sheet refers to. `shared/demo/README.md`
 * shows it by example.
 */

/** How all sheets look, the demo's and the ready ones. */
export interface Look {
  /** Colours by name. Whatever takes a colour takes one of these names, or "#rrggbb". */
  readonly colors: Readonly<Record<string, string>>;
  /** Styles by name. "base" goes under every cell. */
  readonly styles: Readonly<Record<string, Style>>;
}

/** `workbook.json`. */
export interface WorkbookFile {
  readonly name: string;
  /** The file of the look, from this file's folder on. */
  readonly look: string;
  /** The sheets in order: "start" is `sheets/start.json`. */
  readonly sheets: readonly string[];
}

/** How a cell looks. What is left out comes from the style beneath. */
export interface Style {
  readonly font?: string;
  /** In points. */
  readonly size?: number;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly color?: string;
  readonly fill?: string;
  readonly align?: "left" | "center" | "right";
  readonly valign?: "top" | "middle" | "bottom";
  readonly wrap?: boolean;
  /** Space left of the text, in pixels. */
  readonly indent?: number;
  /** A number format as in any spreadsheet: "0.0%", "ddd d mmm". */
  readonly format?: string;
  /** A thin line along an edge, in a colour. */
  readonly top?: string;
  readonly bottom?: string;
}

/** A file in `sheets/`. Addresses are written as in a formula: "B4", "A4:F9", "C", "B:D". */
export interface SheetFile extends Contents {
  readonly name: string;
  /** The sheet's file that this one is made of, from the folder of `workbook.json` on; what stands here goes on top. */
  readonly like?: string;
  /** The list that the sheet's formulas read. */
  readonly reads?: ReadList;
  /** What an invented squad's list puts on the sheet, for a workbook that has no such list yet. */
  readonly invented?: Contents;
  /** The colour of the sheet's tab. */
  readonly tab?: string;
  /** The first cell that scrolls: "A4" keeps three rows in sight, "B4" the first column as well. */
  readonly freeze?: string;
  readonly gridlines?: boolean;
}

/** A list as a coach keeps it, of which a sheet's formulas read columns. */
export interface ReadList {
  readonly list: ListKind;
  /** Where each column stands: "{load}" in a formula is the range that is named here "load". */
  readonly columns: Readonly<Record<string, string>>;
}

/** `maxima`: a row a lifter, a column a lift. `log`: a row a set. */
export type ListKind = "log" | "maxima";

/** What stands on a sheet, and where. */
export interface Contents {
  /** Widths of columns in pixels: { "A": 120, "B:F": 72 }. */
  readonly widths?: Readonly<Record<string, number>>;
  /** Heights of rows in pixels: { "1": 40 }. */
  readonly heights?: Readonly<Record<string, number>>;
  readonly merge?: readonly string[];
  /**
   * Styles over cells, columns or rows, by name: { "A4:F4": "heading", "C": "load right" }. Where
   * several apply, each adds to the ones before it.
   */
  readonly style?: Readonly<Record<string, string>>;
  /**
   * What stands where: one content, a row of them, or rows of them, from that address on.
   * { "A1": "Training log", "A4": ["date", "lift"], "A5": [["2026-01-05", "Squat"], [...]] }
   */
  readonly cells?: Readonly<Record<string, Written | readonly Written[] | Written[][]>>;
  /** CSV files, each from an address on: { "A4": "log.csv" }. */
  readonly csv?: Readonly<Record<string, string>>;
  /** A formula for the first cell of a range, filled over the rest as by dragging its corner. */
  readonly fill?: Readonly<Record<string, string>>;
}

/**
 * A cell's content. Text that starts with "=" is a formula, "2026-01-05" is a date, and a leading
 * apostrophe, which is not shown, makes either plain text. `null` leaves the cell empty.
 */
export type Written = string | number | boolean | null;
