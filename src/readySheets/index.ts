/** Sheets in a language that people read: what their files say, laid out cell by cell for whatever host shows them. */
export type { ListKind, Look, SheetFile, Style, WorkbookFile, Written } from "./format";
export { layOutSheet } from "./layOut";
export { reading } from "./ownList";
export { readSheets } from "./readFolder";
export type { OwnList, ReadyCell, ReadyCells, ReadySheet, ReadyWorkbook } from "./ready";
