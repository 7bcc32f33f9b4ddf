import type { IWorkbookData } from "@univerjs/core";
import { LocaleType } from "@univerjs/core";
import type { Package, XmlElement } from "../package";
import { childOf, findWorkbook, flagOf, relationshipsOf, UnreadableFile, xmlAt } from "../package";
import { resourceOf } from "../pictures";
import { textOfItem } from "../strings";
import { colorReader } from "./colors";
import { readNames } from "./names";
import { drawnOn, readPictures } from "./pictures";
import { readSheet } from "./sheet";
import { listSheets } from "./sheets";
import { readStyles } from "./styles";
import { readTables } from "./tables";

/**
 * Reads a workbook's file as the spreadsheet keeps one: values, formulas with the values they were
 * saved with, looks, sizes, merged cells, frozen panes, names and pictures. Our functions come in Excel's
 * spelling whatever the file's is, and references into tables as plain ranges. Of a workbook that
 * counts days from 1904, the cells that show dates are brought to the count from 1900.
 */
export function readWorkbook(file: Package, name = "Workbook"): IWorkbookData {
  const path = findWorkbook(file);
  const workbook = xmlAt(file, path);
  const sheets = listSheets(file);
  if (sheets.length === 0) throw new UnreadableFile("the workbook holds no sheet with cells");

  const styleSheet = partOfType(file, path, "styles");
  const colorOf = colorReader(file, path, styleSheet);
  const styles = readStyles(styleSheet, colorOf);
  const tables = readTables(file, sheets);
  const surroundings = {
    strings: readStrings(file, path),
    styles,
    tables,
    countsFrom1904: countsFrom1904(workbook),
  };
  const read = sheets.map((sheet) => {
    const drawn = drawnOn(file, sheet.path);
    const data = readSheet(file, sheet, surroundings, colorOf, drawn);
    return { id: sheet.id, data, pictures: readPictures(drawn, sheet.id, data) };
  });
  return {
    id: "workbook",
    name,
    appVersion: "",
    locale: LocaleType.EN_US,
    styles: Object.fromEntries(styles.map((style, index) => [String(index), style])),
    // Every look in a file is complete; more than a font here would show through the others.
    ...(styles[0] && { defaultStyle: { ff: styles[0].ff, fs: styles[0].fs } }),
    sheetOrder: sheets.map(({ id }) => id),
    sheets: Object.fromEntries(read.map(({ id, data }) => [id, data])),
    resources: [
      ...readNames(childOf(workbook, "definedNames"), sheets, tables),
      resourceOf(
        new Map(read.flatMap(({ id, pictures }) => (pictures.length > 0 ? [[id, pictures]] : []))),
      ),
    ],
  };
}

/** Whether a workbook's day 0 is the first of 1904. */
export function countsFrom1904(workbook: XmlElement): boolean {
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
  if (found) xmlAt(file, found.target, "si", (item) => strings.push(textOfItem(item)));
  return strings;
}
