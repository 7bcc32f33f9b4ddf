import type { Package } from "../package";
import { findWorkbook, relationshipsOf, textAt } from "../package";
import { listSheets } from "./sheets";

/** What parts of a workbook hold that the spreadsheet here does not keep, by their relationship. */
const partsNotKept: Readonly<Record<string, string>> = {
  chart: "charts",
  chartsheet: "charts",
  drawing: "charts and pictures",
  comments: "notes",
  threadedComment: "comments",
  pivotTable: "pivot tables",
  pivotCacheDefinition: "pivot tables",
  table: "tables' own look and names",
  vbaProject: "macros",
  externalLink: "links to other workbooks",
  slicer: "slicers",
  control: "buttons",
};

/** The same of elements in a worksheet. */
const elementsNotKept: Readonly<Record<string, string>> = {
  conditionalFormatting: "conditional formats",
  dataValidation: "checks on what may be typed",
  hyperlink: "links",
  sheetProtection: "protection",
  autoFilter: "filters",
  sparklineGroup: "sparklines",
};

/**
 * What a workbook holds beside the cells, looks, sizes and names that `readWorkbook` reads, in a
 * person's words: opened and written again, it is gone.
 */
export function lossesOf(file: Package): string[] {
  const workbookPath = findWorkbook(file);
  const sheets = listSheets(file);
  const related = [workbookPath, ...sheets.map(({ path }) => path)].flatMap((path) =>
    relationshipsOf(file, path),
  );
  const parts = related.map(({ type }) => partsNotKept[type]);
  const elements = sheets.flatMap(({ path }) => {
    const xml = textAt(file, path);
    return Object.keys(elementsNotKept)
      .filter((name) => new RegExp(`<(?:\\w+:)?${name}[\\s/>]`).test(xml))
      .map((name) => elementsNotKept[name]);
  });
  return [...new Set([...parts, ...elements])].filter((loss) => loss !== undefined);
}
