import type { WorkbookModel } from "../model";
import type { Package, XmlElement } from "../package";
import { childOf, findWorkbook, flagOf, relationshipsOf, UnreadableFile, xmlAt } from "../package";
import { textOfItem } from "../strings";
import { refuseAbsentParts } from "./absentParts";
import { createTally } from "./bounds";
import { colorReader } from "./colors";
import { checkFormulas } from "./formulaBounds";
import { readNames } from "./names";
import type { ReadSheet } from "./sheet";
import { readSheet } from "./sheet";
import { listSheets } from "./sheets";
import { readStyles } from "./styles";
import { readTables } from "./tables";

/** A workbook read from a file, with where things stand in it. */
export interface ReadWorkbook extends WorkbookModel {
  readonly file: Package;
  /** The path of the part that lists the sheets. */
  readonly path: string;
  readonly sheets: readonly ReadSheet[];
}

/**
 * Reads a workbook's file, whoever is to see it: its values as they were saved, formulas as the file
 * spells them, looks, sizes, merged cells, frozen panes, names, tables and pictures.
 */
export function readWorkbook(file: Package): ReadWorkbook {
  const path = findWorkbook(file);
  refuseAbsentParts(file, path);
  const workbook = xmlAt(file, path);
  const listed = listSheets(file);
  if (listed.length === 0) throw new UnreadableFile("the workbook holds no sheet with cells");

  const styleSheet = partOfType(file, path, "styles");
  const colorOf = colorReader(file, path, styleSheet);
  const from1904 = countsFrom1904(workbook);
  const strings = readStrings(file, path);
  const surroundings = { strings, from1904, colorOf, tally: createTally() };
  const sheets = listed.map((sheet) => readSheet(file, sheet, surroundings));
  const names = readNames(workbook);
  const tables = readTables(file, listed);
  checkFormulas(sheets, names, tables);
  return {
    file,
    path,
    sheets,
    styles: readStyles(styleSheet, colorOf),
    names,
    tables,
    from1904,
  };
}

/** Whether a workbook's day 0 is the first of 1904. */
function countsFrom1904(workbook: XmlElement): boolean {
  const properties = childOf(workbook, "workbookPr");
  return properties !== undefined && flagOf(properties, "date1904");
}

function partOfType(file: Package, path: string, type: string): XmlElement | undefined {
  const found = relationshipsOf(file, path).find((relationship) => relationship.type === type);
  return found && xmlAt(file, found.target);
}

function readStrings(file: Package, path: string): string[] {
  const found = relationshipsOf(file, path).find(({ type }) => type === "sharedStrings");
  const strings: string[] = [];
  if (found) xmlAt(file, found.target, "sst/si", (item) => strings.push(textOfItem(item)));
  return strings;
}
