export { workbookData } from "./workbookData";
export type { ComputedWorkbook } from "./workbookModel";
export { workbookModel } from "./workbookModel";
