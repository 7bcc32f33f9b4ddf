import type { IResources } from "@univerjs/core";
import { cellAddress, type Area } from "../formula/address";
import { shiftFormula } from "../formula/shift";
import type { Table } from "../formula/tables";
import {
  attributeOf,
  childOf,
  childrenOf,
  findWorkbook,
  numberOf,
  partAt,
  relationshipsOf,
  textAt,
  UnreadableFile,
  xmlAt,
  type Package,
} from "../xlsx/package";
import { readNames } from "../xlsx/read/names";
import { listSheets } from "../xlsx/read/sheets";
import { readTables } from "../xlsx/read/tables";
import { countsFrom1904 } from "../xlsx/read/workbook";
import { fromFileText, textOfItem } from "../xlsx/strings";
import { readSheetXml, type SheetXml, type XmlCell } from "../xlsx/patch/sheetXml";

/** What a cell can hold in a workbook's file; an error is its code. */
export type CellValue = number | string | boolean | null;

/** How a formula is to be worked out. */
export type FormulaKind =
  /** For its own cell alone. */
  | "one cell"
  /** Over a range of cells that was chosen when it was typed, as Ctrl+Shift+Enter did. */
  | "fixed array"
  /** Over as many cells as its result has. */
  | "spilling"
  /** A what-if table, which is no formula at all. */
  | "data table";

export interface FormulaCell {
  readonly sheet: BookSheet;
  readonly row: number;
  readonly column: number;
  /** As the file has it, without "=". */
  readonly text: string;
  readonly kind: FormulaKind;
  /** The cells it fills; its own where it fills no other. */
  readonly area: Area;
  /** What the file holds as its result. */
  readonly saved: CellValue;
}

export interface BookSheet {
  readonly name: string;
  /** The id it has in an open workbook. */
  readonly id: string;
  /** The number by which other parts of the file know it. */
  readonly number: number;
  readonly path: string;
  readonly content: SheetXml;
  /** By address. */
  readonly cells: ReadonlyMap<string, XmlCell>;
}

/** A name for a formula or a range. */
export interface BookName {
  readonly name: string;
  readonly text: string;
  /** The only sheet where it is known. */
  readonly sheet: string | undefined;
}

/** A workbook's file as far as calculating needs it. */
export interface Book {
  readonly file: Package;
  readonly workbookPath: string;
  readonly sheets: readonly BookSheet[];
  readonly formulas: readonly FormulaCell[];
  readonly names: readonly BookName[];
  /** The names as an open workbook keeps them. */
  readonly openNames: IResources;
  readonly tables: readonly Table[];
  /** Whether days are counted from 1904, as spreadsheets for the first Macintosh did. */
  readonly from1904: boolean;
  valueOf(cell: XmlCell): CellValue;
}

export function readBook(file: Package): Book {
  const workbookPath = findWorkbook(file);
  const workbook = xmlAt(file, workbookPath);
  const strings = readSharedStrings(file, workbookPath);
  const valueOf = (cell: XmlCell) => readValue(cell, strings);
  const all = childrenOf(childOf(workbook, "sheets"), "sheet");
  const sheetNames = all.map((element) => attributeOf(element, "name"));
  const names = childOf(workbook, "definedNames");
  const listed = listSheets(file);
  const tables = readTables(file, listed);

  const sheets = listed.map(({ id, name, path, position }): BookSheet => {
    const content = readSheetXml(textAt(file, path), path);
    const cells = new Map<string, XmlCell>();
    for (const row of content.rows) {
      for (const cell of row.cells) cells.set(cellAddress(cell.row, cell.column), cell);
    }
    return { id, name, path, number: numberOf(all[position], "sheetId") ?? 0, content, cells };
  });
  return {
    file,
    workbookPath,
    sheets,
    formulas: sheets.flatMap((sheet) => readFormulas(sheet, valueOf)),
    names: childrenOf(names, "definedName").map((element) => ({
      name: attributeOf(element, "name") ?? "",
      text: element.text,
      sheet: sheetNames[numberOf(element, "localSheetId") ?? -1],
    })),
    openNames: readNames(names, listed, tables),
    tables,
    from1904: countsFrom1904(workbook),
    valueOf,
  };
}

function readSharedStrings(file: Package, workbookPath: string): readonly string[] {
  const part = relationshipsOf(file, workbookPath).find(({ type }) => type === "sharedStrings");
  const strings: string[] = [];
  if (part && partAt(file, part.target)) {
    xmlAt(file, part.target, "si", (element) => strings.push(textOfItem(element)));
  }
  return strings;
}

function readValue(cell: XmlCell, strings: readonly string[]): CellValue {
  const { type, value } = cell;
  if (value === undefined || (value === "" && type === "n")) return null;
  if (type === "s") return strings[Number(value)] ?? null;
  if (type === "b") return value.trim() === "1" || value.trim() === "true";
  if (type === "str" || type === "inlineStr") return type === "str" ? fromFileText(value) : value;
  if (type !== "n") return value;
  const number = Number(value);
  if (Number.isFinite(number)) return number;
  throw new UnreadableFile(
    `the file is damaged: ${cellAddress(cell.row, cell.column)} holds "${value}" as a number`,
  );
}

/** All formulas of a sheet, those that share one written out. */
function readFormulas(sheet: BookSheet, valueOf: Book["valueOf"]): FormulaCell[] {
  const shared = new Map<number, XmlCell>();
  const formulas: FormulaCell[] = [];
  for (const cell of sheet.cells.values()) {
    const { formula, row, column } = cell;
    if (!formula) continue;
    const { kind, group } = formula;
    if (kind === "shared" && group !== undefined && formula.text !== "") shared.set(group, cell);
    const first = kind === "shared" ? shared.get(group ?? -1) : undefined;
    const text = first
      ? shiftFormula(first.formula!.text, row - first.row, column - first.column)
      : formula.text;
    const own = { startRow: row, startColumn: column, endRow: row, endColumn: column };
    const fills = kind === "array" || kind === "dataTable";
    if (text === "" && kind !== "dataTable") continue;
    formulas.push({
      sheet,
      row,
      column,
      text,
      kind: kindOf(cell),
      area: (fills && formula.area) || own,
      saved: valueOf(cell),
    });
  }
  return formulas;
}

function kindOf({ formula, dynamic }: XmlCell): FormulaKind {
  if (formula?.kind === "dataTable") return "data table";
  if (formula?.kind !== "array") return "one cell";
  return dynamic ? "spilling" : "fixed array";
}
