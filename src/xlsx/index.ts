export type { Package } from "./package";
export { readPackage, UnreadableFile, writePackage } from "./package";
export type { ReadWorkbook } from "./read/workbook";
export { readWorkbook } from "./read/workbook";
export { lossesOf } from "./read/losses";
export { writeWorkbook } from "./write/workbook";
