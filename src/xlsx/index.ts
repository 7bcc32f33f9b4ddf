export { daysFrom1900To1904, isDateFormat } from "./numberFormats";
export type { Package } from "./package";
export { readPackage, UnreadableFile, writePackage } from "./package";
export type { ListedSheet } from "./read/sheets";
export { listSheets } from "./read/sheets";
export { lossesOf } from "./read/losses";
export { countsFrom1904, readWorkbook } from "./read/workbook";
export type { ComputedWorkbook } from "./write/workbook";
export { writeWorkbook } from "./write/workbook";
