import { timeOfSerial } from "../cells";

import { toFile } from "../formula/future";
import { changedCells, type BookChanges } from "../recalculate/saveValues";
import {
  readPackage,
  readWorkbook,
  UnreadableFile,
  writeWorkbook,
  type ReadWorkbook,
} from "../xlsx";
import { dayOfIso } from "../xlsx/days";
import type { CellModel, CellValue, FormulaModel, RowModel } from "../xlsx/model";
import { isDateFormat } from "../xlsx/numberFormats";
import { LAST_COLUMN, LAST_ROW } from "../formula/address";
import type { ReadSheet } from "../xlsx/read/sheet";
import { putInto } from "./putInto";
import { parseCsv, separatorOf, writeCsv, type Separator } from "./csv";

/** Values that were read from a text, with what it takes to write them as they were. */
export interface Table {
  readonly rows: readonly (readonly string[])[];
  readonly separator: Separator;
}

/** Reads a text of values, parted by whatever its first line is. */
export function readTable(bytes: Uint8Array, separator?: Separator): Table {
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new UnreadableFile("the file is not text in UTF-8");
  }
  if (text.includes("\0")) throw new UnreadableFile("the file is not text");
  if (text.trim() === "") throw new UnreadableFile("the file is empty");
  const parted = separator ?? separatorOf(text);
  const rows = parseCsv(text, parted);
  const width = rows.reduce((most, { length }) => Math.max(most, length), 0);
  if (rows.length > LAST_ROW + 1 || width > LAST_COLUMN + 1) {
    throw new UnreadableFile(
      `it has ${rows.length} rows and ${width} columns, more than a sheet; spare table reads larger ones`,
    );
  }
  return { rows, separator: parted };
}

/** A table as a workbook of one sheet, in which text that starts with "=" is a formula. */
export function workbookOf({ rows }: Table, name: string): ReadWorkbook {
  const sheet = {
    ...{ name, hidden: false, gridlines: true, rightToLeft: false },
    ...{ merges: [], columns: new Map(), pictures: [] },
    rows: rows.map((row, at): RowModel => ({
      row: at,
      cells: row.flatMap((text, column) => cellOf(text, at, column)),
    })),
  };
  const styles = [{}, { format: "yyyy-mm-dd" }];
  const file = writeWorkbook({ sheets: [sheet], styles, names: [], tables: [], from1904: false });
  return readWorkbook(readPackage(file));
}

/** A formula of one cell that may spill, as a file has it. */
export function formulaAt(text: string, row: number, column: number): FormulaModel {
  const area = { startRow: row, startColumn: column, endRow: row, endColumn: column };
  return { text: toFile(text.replace(/^=/, "")), kind: "spilling", area };
}

function cellOf(text: string, row: number, column: number): CellModel[] {
  if (text.trim() === "") return [];
  if (text.startsWith("=") && text.length > 1) {
    return [{ row, column, style: 0, value: null, formula: formulaAt(text, row, column) }];
  }
  const day = ISO_DAY.test(text) ? dayOfIso(text, false) : undefined;
  return [{ row, column, style: day === undefined ? 0 : 1, value: day ?? valueOf(text) }];
}

const ISO_DAY = /^\d{4}-\d\d-\d\d/;
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

function valueOf(text: string): CellValue {
  if (NUMBER.test(text) && Number.isFinite(Number(text))) return Number(text);
  if (/^(?:true|false)$/i.test(text)) return text.toLowerCase() === "true";
  return text;
}

/** A table as it was, with what its formulas came to in their places. */
export function tableWith({ rows, separator }: Table, changes: BookChanges): string {
  const filled: CellValue[][] = rows.map((row) => [...row]);
  for (const { row, column, value } of changedCells(changes)) {
    putInto(filled, row, column, value);
  }
  return writeCsv(filled, separator);
}

/** A sheet's values with what was worked out now over them, dates as 2026-01-05. */
export function valuesOf(
  sheet: ReadSheet,
  { styles }: Pick<ReadWorkbook, "styles">,
  changes: BookChanges,
): CellValue[][] {
  const values: CellValue[][] = [];
  const put = (row: number, column: number, value: CellValue) => {
    const format = styles[sheet.cellAt(row, column)?.style ?? 0]?.format;
    putInto(values, row, column, format === undefined ? value : dayIn(value, format));
  };
  for (const { cells } of sheet.rows)
    for (const each of cells) put(each.row, each.column, each.value);
  for (const each of changedCells(changes)) {
    if (each.sheet === sheet) put(each.row, each.column, each.value);
  }
  return values;
}

/** What a cell with a date's format holds, as a date without the format can be read everywhere. */
function dayIn(value: CellValue, format: string): CellValue {
  if (typeof value !== "number" || !isDateFormat(format)) return value;
  const written = new Date(timeOfSerial(value));
  if (Number.isNaN(written.getTime())) return value;
  const [day = "", time = ""] = written.toISOString().split("T");
  return Number.isInteger(value) ? day : `${day}T${time.slice(0, 8)}`;
}
