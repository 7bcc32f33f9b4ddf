import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { IStyleData, IWorkbookData } from "@univerjs/core";
import { LocaleType } from "@univerjs/core";
import { parseCsv } from "./csv";
import type { DemoSheet, DemoWorkbook } from "./format";
import { layOutSheet } from "./sheet";
import { colorOf, styleOf } from "./style";

const demoFolder = fileURLToPath(new URL("../../shared/demo", import.meta.url));

/** Reads the demo from its folder as a workbook, formulas and all, nothing computed yet. */
export function readDemo(folder = demoFolder): IWorkbookData {
  const read = (...path: string[]) => readFileSync(join(folder, ...path), "utf8");
  const workbook = JSON.parse(read("workbook.json")) as DemoWorkbook;
  const styles: Record<string, IStyleData> = {};

  function styleId(names: readonly string[]): string {
    const all = ["base", ...names];
    const id = all.join(" ");
    styles[id] ??= styleOf(all, workbook);
    return id;
  }

  const sheets = workbook.sheets.map((id) => {
    const sheet = JSON.parse(read("sheets", `${id}.json`)) as DemoSheet;
    return layOutSheet(id, sheet, {
      readCsv: (file) => parseCsv(read("sheets", file)),
      styleId,
      colorOf: (color) => colorOf(color, workbook.colors),
    });
  });
  return {
    id: "demo",
    name: workbook.name,
    appVersion: "",
    locale: LocaleType.EN_US,
    styles,
    defaultStyle: styleOf(["base"], workbook),
    sheetOrder: [...workbook.sheets],
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
  };
}
