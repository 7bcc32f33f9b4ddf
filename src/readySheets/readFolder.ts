import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parseCsv } from "./csv";
import type { SheetFile, WorkbookFile } from "./format";
import { layOutSheet } from "./layOut";
import type { ReadyWorkbook } from "./ready";
import { styleOf } from "./styles";

/** Reads a folder of sheets and lays them out, formulas and all, nothing computed yet. */
export function readSheets(folder: string): ReadyWorkbook {
  const read = (...path: string[]) => readFileSync(join(folder, ...path), "utf8");
  const workbook = JSON.parse(read("workbook.json")) as WorkbookFile;
  return {
    name: workbook.name,
    base: styleOf(["base"], workbook),
    sheets: workbook.sheets.map((id) => {
      const sheet = JSON.parse(read("sheets", `${id}.json`)) as SheetFile;
      return [id, layOutSheet(sheet, workbook, (file) => parseCsv(read("sheets", file)))];
    }),
  };
}
