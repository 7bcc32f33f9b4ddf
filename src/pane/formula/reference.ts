import {
  columnLetters,
  columnNumber,
  LAST_ROW,
  parseArea,
  quoteSheet,
  SHEET_SOURCE,
  sheetIn,
  type Area,
} from "../../formula/address";

/*
 * References as they are written in a formula: "B2", "B2:B20", "C:C", "C2:.C999" (trimmed),
 * "Log!B2:B20", "'Week 1'!B2", and a Table's "Log[load]", "[@load]", "Log[[#All],[load]]".
 */

const CELL = String.raw`\$?[A-Z]{1,3}\$?[1-9]\d{0,6}`;
const COLUMN = String.raw`\$?[A-Z]{1,3}`;
const ROW = String.raw`\$?[1-9]\d{0,6}`;
const BETWEEN = String.raw`\.?:\.?`;
const AREA = `(?:${CELL}(?:${BETWEEN}${CELL})?#?|${COLUMN}${BETWEEN}${COLUMN}|${ROW}${BETWEEN}${ROW})`;
const TABLE = String.raw`[\p{L}_][\p{L}\p{N}_.]*\[(?:[^[\]]|\[[^[\]]*\])*\]|\[@[^[\]]*\]|\[@\[[^[\]]*\]\]`;

const REFERENCE = new RegExp(`^(?:(?:${SHEET_SOURCE})?${AREA}|${TABLE})$`, "iu");

/** Whether this text, alone, is a reference to cells. */
export const isReference = (text: string): boolean => REFERENCE.test(text);

/** Cells with their sheet: `referenceTo("Week 1", "B2:B20")` is `'Week 1'!B2:B20`. */
export function referenceTo(sheet: string, address: string): string {
  return `${quoteSheet(sheet)}!${address}`;
}

/** Takes a reference apart; without a sheet's name, it is on the sheet where it stands. */
export function partsOf(text: string): { sheet: string | undefined; address: string } {
  const mark = text.startsWith("'") ? text.lastIndexOf("'!") + 1 : text.indexOf("!");
  if (mark <= 0) return { sheet: undefined, address: text };
  return { sheet: sheetIn(text.slice(0, mark + 1)), address: text.slice(mark + 1) };
}

/** The reference as it may be written on a sheet: its own name need not be said there. */
export function seenFrom(sheet: string, text: string): string {
  const parts = partsOf(text);
  return parts.sheet?.toLowerCase() === sheet.toLowerCase() ? parts.address : text;
}

/** The cells of a reference, whole columns from the first row on; nothing for a Table's or whole rows. */
export function areaOf(text: string): (Area & { sheet: string | undefined }) | undefined {
  const { sheet, address } = partsOf(text);
  const plain = plainAddress(address);
  const columns = /^([A-Z]+):([A-Z]+)$/.exec(plain);
  const area = columns
    ? parseArea(`${columns[1]}1:${columns[2]}${LAST_ROW + 1}`)
    : parseArea(plain);
  return area && { ...area, sheet };
}

/**
 * One column out of a range such as "B2:D20": `columnOf("B2:D20", 1)` is "C2:C20"; and without so many rows of
 * headings: `columnOf("B2:D20", 1, 1)` is "C3:C20".
 */
export function columnOf(address: string, column: number, headings = 0): string {
  const match = /^([A-Z]+)(\d+)(?::[A-Z]+(\d+))?$/i.exec(address.replaceAll("$", ""));
  if (!match) throw new Error(`"${address}" is not a range of cells`);
  const [, left = "", first = "", bottom = first] = match;
  const top = String(Number(first) + headings);
  const letters = columnLetters(columnNumber(left) + column);
  return top === bottom ? `${letters}${top}` : `${letters}${top}:${letters}${bottom}`;
}

/** The trimming dots of "C2:.C999" and the dollars are for formulas; a host's own ranges do without. */
export const plainAddress = (address: string): string =>
  address.replaceAll(/\$|\.(?=:)|(?<=:)\./g, "").toUpperCase();
