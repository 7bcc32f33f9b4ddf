/** Sheets in a language that people read: what their files say, laid out cell by cell for whatever host shows them. */
export type { SheetFile, Style, WorkbookFile, Written } from "./format";
export { layOutSheet } from "./layOut";
export { readSheets } from "./readFolder";
export type { ReadyCell, ReadyCells, ReadySheet, ReadyWorkbook } from "./ready";
