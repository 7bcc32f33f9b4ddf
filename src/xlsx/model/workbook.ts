import type { Table } from "../../formula/tables";
import type { SheetModel } from "./sheet";
import type { StyleModel } from "./style";

/** A name that stands for a range, a value or a formula. */
export interface NameModel {
  readonly name: string;
  /** As the file has it, without "=". */
  readonly text: string;
  /** The only sheet where it is known, by its name; nothing for all of the workbook. */
  readonly sheet?: string;
  readonly hidden?: boolean;
  readonly comment?: string;
}

/** A workbook as every part of the program sees one, whatever file or screen it comes from. */
export interface WorkbookModel {
  /** The sheets that hold cells, in their order. */
  readonly sheets: readonly SheetModel[];
  /** How cells look, by the number under which they name it; the first is that of untouched cells. */
  readonly styles: readonly StyleModel[];
  readonly names: readonly NameModel[];
  readonly tables: readonly Table[];
  /** Whether days are counted from 1904, as spreadsheets for the first Macintosh did. */
  readonly from1904: boolean;
}
