import type { Area } from "../../formula/address";

/** What a cell can hold in a workbook's file; an error is its code. */
export type CellValue = number | string | boolean | null;

/** How a formula is to be worked out. */
export type FormulaKind =
  /** For its own cell alone. */
  | "one cell"
  /** Over a range of cells that was chosen when it was typed, as Ctrl+Shift+Enter did. */
  | "fixed array"
  /** Over as many cells as its result has. */
  | "spilling"
  /** A what-if table, which is no formula at all. */
  | "data table";

export interface FormulaModel {
  /** As the file has it, without "=". */
  readonly text: string;
  readonly kind: FormulaKind;
  /** The cells it fills; its own where it fills no other. */
  readonly area: Area;
}

/** A cell where it stands; rows and columns count from 0. */
export interface CellModel {
  readonly row: number;
  readonly column: number;
  /** Which of the workbook's styles it has. */
  readonly style: number;
  /** What it holds; with a formula, what that came to when the file was saved. */
  readonly value: CellValue;
  readonly formula?: FormulaModel;
}

const ERROR_CODE = /^#(?:N\/A|[A-Z]+(?:\/0)?[!?])$/;

/** Whether a value is an error's code. */
export function isError(value: CellValue): value is string {
  return typeof value === "string" && ERROR_CODE.test(value);
}
