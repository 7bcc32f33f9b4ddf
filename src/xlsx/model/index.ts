export type { CellModel, CellValue, FormulaKind, FormulaModel } from "./cell";
export { isError } from "./cell";
export type { Comparison, FilterColumn, FilterCondition, FilterModel } from "./filter";
export { COMPARISONS, isFiltered } from "./filter";
export type { Corner, Corners, Crop, ImageFile, PictureModel } from "./picture";
export type { ColumnModel, FreezeModel, RowModel, SheetModel } from "./sheet";
export type { BorderSide, LineModel, LineStyle, StyleModel } from "./style";
export { LINE_STYLES } from "./style";
export type { NameModel, WorkbookModel } from "./workbook";
