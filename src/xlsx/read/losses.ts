import type { Package } from "../package";
import { findWorkbook, relationshipsOf, textAt } from "../package";
import { lostSettings } from "./lostSettings";
import { drawnOn } from "./pictures";
import { listSheets } from "./sheets";

/** What parts of a workbook hold that the spreadsheet here does not keep, by their relationship. */
const PARTS_NOT_KEPT: Readonly<Record<string, string>> = {
  chart: "charts",
  chartsheet: "charts",
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
const ELEMENTS_NOT_KEPT: Readonly<Record<string, string>> = {
  conditionalFormatting: "conditional formats",
  dataValidation: "checks on what may be typed",
  hyperlink: "links",
  sheetProtection: "protection",
  colorFilter: "filters by colour",
  iconFilter: "filters by icon",
  top10: "filters by rank",
  dynamicFilter: "filters by date or mean",
  dateGroupItem: "filters by date",
  sparklineGroup: "sparklines",
};

/** The same of what lies over the cells; a picture is kept where it is one that browsers show. */
const DRAWINGS_NOT_KEPT: Readonly<Record<string, string>> = {
  graphicFrame: "charts",
  pic: "pictures that browsers do not show",
  sp: "shapes",
  cxnSp: "shapes",
  grpSp: "groups of shapes and pictures",
  AlternateContent: "newer kinds of charts and shapes",
};

/**
 * What a workbook holds beside the cells, looks, sizes, names and pictures that `readWorkbook` reads, in a
 * person's words: opened and written again, it is gone.
 */
export function lossesOf(file: Package): string[] {
  const workbookPath = findWorkbook(file);
  const sheets = listSheets(file);
  const related = [workbookPath, ...sheets.map(({ path }) => path)].flatMap((path) =>
    relationshipsOf(file, path),
  );
  const drawings = sheets.flatMap(({ path }) =>
    drawnOn(file, path)
      .filter(({ image }) => !image)
      .flatMap(({ anchor }) =>
        anchor
          ? [anchor, ...anchor.children].map(({ name }) => DRAWINGS_NOT_KEPT[name])
          : "drawings that could not be read",
      ),
  );
  const parts = related.map(({ type }) => PARTS_NOT_KEPT[type]);
  const elements = sheets.flatMap(({ path }) => {
    const xml = textAt(file, path);
    return Object.keys(ELEMENTS_NOT_KEPT)
      .filter((name) => new RegExp(`<(?:\\w+:)?${name}[\\s/>]`).test(xml))
      .map((name) => ELEMENTS_NOT_KEPT[name]);
  });
  return [...new Set([...parts, ...drawings, ...elements, ...lostSettings(file)])].filter(
    (loss) => typeof loss === "string",
  );
}
