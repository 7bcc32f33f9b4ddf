import type { CellValue } from "../../../src/xlsx/model";
import { buildBook, worksheet, type BookParts } from "../../cli/support";

/**
 * A file as it may come from anywhere: damaged, made to harm, or odd and yet right. Every program that opens it is to
 * come to the right values or to refuse it in one clear line.
 */
export interface HostileFile {
  /** What is the matter with it. */
  readonly name: string;
  readonly bytes: () => Uint8Array;
  /** What the refusal says, of a file that must be refused. */
  readonly refused?: RegExp;
  /** Whether it must be opened. */
  readonly opened?: true;
  /** Whether the sheet that is checked is as it was; usually it is. */
  readonly hasCheck?: boolean;
  /** What cells hold once it is open and computed: `{ "Log!B2": 5 }`. */
  readonly cells?: Readonly<Record<string, CellValue>>;
}

/** The sheet that every file has beside what is hostile in it, and what its one formula comes to. */
export const checkSheet = "Check";
/** 100 kg for 5 reps is 100 × (1 + 5/30) by Epley (1985). */
export const checkValue = 100 * (1 + 5 / 30);

const check = `<row r="1"><c r="A1"><f>_xldudf_SPARE_E1RM(100,5)</f></c></row>`;

/** What is hostile in a workbook, around a sheet "Log". */
export interface Log extends Omit<BookParts, "sheets"> {
  /** What is inside `<sheetData>`, or a whole worksheet. */
  readonly data?: string;
  /** What follows the rows, and what comes before them. */
  readonly after?: string;
  readonly before?: string;
  readonly more?: Readonly<Record<string, string>>;
}

/** A workbook with the sheet that is checked, and a sheet "Log" in which something is hostile. */
export function bookWith({ data = "", after, before, more, ...rest }: Log): Uint8Array {
  const whole = data.startsWith("<worksheet") || data.startsWith("<?xml");
  const log = whole ? data : worksheet(data, after, before);
  return buildBook({ sheets: { [checkSheet]: check, Log: log, ...more }, ...rest });
}

/** The path of the sheet "Log". */
export const logPath = "xl/worksheets/sheet2.xml";

/** A row with one cell, `B1` unless said otherwise, that holds a formula. */
export const formulaAt = (formula: string, address = "B1", attributes = ""): string =>
  `<row r="${/\d+/.exec(address)![0]}"><c r="${address}"><f${attributes}>${escaped(formula)}</f></c></row>`;

export const escaped = (text: string) =>
  text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
