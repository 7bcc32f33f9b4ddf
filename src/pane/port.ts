import type { ReadySheet } from "../readySheets";
import type { Insertion } from "./insert/insertion";

/**
 * All that the pane asks of a spreadsheet. Excel and the embedded workbook each implement it once;
 * nothing else in the pane knows which of the two it sits in.
 */
export interface Port {
  /** What is selected now. */
  readSelection(): Promise<Selection>;
  /** The values of a range, "B2:B20" or "Log!B2:B20"; without a sheet's name, on the active sheet. */
  readRange(reference: string): Promise<CellValues>;
  /** The cell that a formula would go into. */
  readTarget(): Promise<Target>;
  /** The first cell of a range that holds something, a formula that shows nothing among them. */
  firstFilled(reference: string): Promise<string | undefined>;
  /** The formulas of a sheet, each in its cell. Left out where a host cannot say. */
  readonly formulasOn?: (sheet: string) => Promise<readonly PlacedFormula[]>;
  /** Writes a formula into its cell, in the spelling of this host, with headings, formats and widths, and selects it. */
  insert(insertion: Insertion): Promise<void>;
  /** Adds a sheet at the end, in this host's own codes, shows it, and says under which name: a taken one gets a number. */
  addSheet(sheet: ReadySheet): Promise<string>;
  /** Calls back whenever the selection may have changed. */
  onSelectionChange(listener: () => void): void;
  /** Puts a picture at a single selected cell, else to the right of the selected cells. */
  addImage(image: Picture): Promise<void>;
  /** Draws a chart of the host's own from a range, in the same place. Left out where a host cannot. */
  readonly addChart?: (chart: NativeChart) => Promise<void>;
}

/** A cell's value as the host gives it: a blank is `null` or "", an error its code as text. */
export type CellValue = number | string | boolean | null;

/** Rows of cells. */
export type CellValues = readonly (readonly CellValue[])[];

export interface Selection {
  readonly sheet: string;
  /** Without the sheet: "B2:C20". Whole columns are cut to the rows in use. */
  readonly address: string;
  readonly values: CellValues;
}

/** A formula with its equals sign, and the cell it stands in. */
export interface PlacedFormula {
  readonly address: string;
  readonly formula: string;
}

export interface Target {
  readonly sheet: string;
  readonly address: string;
  /** Whether something stands there already. */
  readonly filled: boolean;
  /** Whether it lies in a Table, where a result cannot spill. */
  readonly inTable: boolean;
}

export interface Picture {
  /** A PNG, its bytes in base 64. */
  readonly png: string;
  /** In pixels, as it is to appear in the sheet. */
  readonly width: number;
  readonly height: number;
  /** What the picture shows, in words, for those who do not see it. */
  readonly description: string;
}

export interface NativeChart {
  readonly kind: "line" | "columns" | "points";
  readonly title: string;
  readonly across: ChartColumn;
  /** A series each. */
  readonly up: readonly [ChartColumn, ...ChartColumn[]];
}

/** A column of a chart: "Log!B1:B20" with its heading, which names it. */
export interface ChartColumn {
  readonly name: string;
  readonly cells: string;
}
