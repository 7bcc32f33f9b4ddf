import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parseCsv } from "./csv";
import type { Look, SheetFile, WorkbookFile } from "./format";
import { layOutSheet } from "./layOut";
import { onTop } from "./ownList";
import type { ReadyWorkbook } from "./ready";
import { styleOf } from "./styles";

/** Reads a folder of sheets and lays them out, formulas and all, nothing computed yet. */
export function readSheets(folder: string): ReadyWorkbook {
  const read = (...path: string[]) => readFileSync(join(folder, ...path), "utf8");
  const readJson = <T>(...path: string[]) => JSON.parse(read(...path)) as T;
  const readSheet = (...path: string[]): SheetFile => {
    const { like, ...sheet } = readJson<SheetFile>(...path);
    return like === undefined ? sheet : onTop(readSheet(like), sheet);
  };
  const { name, look, sheets } = readJson<WorkbookFile>("workbook.json");
  const styles = readJson<Look>(look);
  return {
    name,
    base: styleOf(["base"], styles),
    sheets: sheets.map((id) => {
      const sheet = readSheet("sheets", `${id}.json`);
      return [id, layOutSheet(sheet, styles, (file) => parseCsv(read("sheets", file)))];
    }),
  };
}
