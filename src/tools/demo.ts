import { join } from "node:path";
import { readyWorkbookData } from "../engine/data/readySheets";
import { readSheets } from "../readySheets";
import { ROOT } from "./paths";

/** The demo from its folder as a workbook, formulas and all, nothing computed yet. */
export const readDemo = (folder = join(ROOT, "shared", "demo")) =>
  readyWorkbookData("demo", readSheets(folder));
