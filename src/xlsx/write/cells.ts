import type { ICellData, Nullable } from "@univerjs/core";
import { CellValueType } from "@univerjs/core";
import { needsArray } from "../../formula/arrays";
import type { Area } from "../../formula/address";
import { areaAddress, cellAddress } from "../../formula/address";
import { toFile } from "../../formula/future";
import { escapeXml, writeXml } from "../package";
import { toFileText } from "../strings";

/** What a cell holds, once everything is computed. */
export type Value = number | string | boolean | null;

/** Gives every text of a workbook a number, under which cells name it. */
export interface SharedStrings {
  numberOf(text: string): number;
}

/** A formula as a person reads it, without its "=", and the cells its result takes up. */
export interface FormulaToWrite {
  readonly text: string;
  readonly area: Area;
}

/** Which of the parts' entries marks a formula as one that spills. */
export const spillsMark = 1;

/** What stands in a cell that holds no formula. */
export function valueOf(cell: Nullable<ICellData>): Value {
  if (!cell) return null;
  const value = cell.v ?? richText(cell);
  if (value === null) return null;
  if (cell.t === CellValueType.BOOLEAN) return value === true || Number(value) === 1;
  if (cell.t === CellValueType.NUMBER && typeof value !== "number") {
    return Number.isFinite(Number(value)) ? Number(value) : String(value);
  }
  const isText = cell.t === CellValueType.STRING || cell.t === CellValueType.FORCE_STRING;
  return isText ? String(value) : value;
}

/** Text that was typed over several lines is kept as a document, which ends each with a return. */
function richText({ p }: ICellData): string | null {
  const stream = p?.body?.dataStream;
  return stream === undefined ? null : stream.replace(/\r?\n$/, "").replace(/\r/g, "\n");
}

/** What is to be written of one cell. */
export interface CellToWrite {
  readonly row: number;
  readonly column: number;
  readonly look: number;
  readonly value: Value;
  readonly formula?: FormulaToWrite;
  /** Whether the value is another cell's, which spilled over this one. */
  readonly spilled: boolean;
}

/** Writes a cell, or nothing where there is nothing to say of it. */
export function writeCell(cell: CellToWrite, strings: SharedStrings): string {
  const { value, formula, spilled } = cell;
  const r = cellAddress(cell.row, cell.column);
  const s = cell.look > 0 ? cell.look : undefined;
  const empty = value === null || (value === "" && !spilled && !formula);
  const { t, v } = empty
    ? { t: undefined, v: "" }
    : writeValue(value, spilled || formula ? undefined : strings);
  const written = empty ? "" : `<v>${v}</v>`;
  if (!formula) return empty && s === undefined ? "" : writeXml("c", { r, s, t }, written);

  const spills = needsArray(formula.text) || areaAddress(formula.area) !== r;
  const attributes = spills ? { t: "array", ref: areaAddress(formula.area) } : {};
  const f = writeXml("f", attributes, escapeXml(toFile(formula.text)));
  return writeXml("c", { r, s, t, cm: spills ? spillsMark : undefined }, f + written);
}

/** A value's type and text; the text that a formula answers with is not shared. */
function writeValue(value: number | string | boolean, strings?: SharedStrings) {
  if (typeof value === "number") return { t: undefined, v: String(value) };
  if (typeof value === "boolean") return { t: "b", v: value ? "1" : "0" };
  const error = errorInFile(value);
  if (error) return { t: "e", v: error };
  if (!strings) return { t: "str", v: escapeXml(toFileText(value)) };
  return { t: "s", v: String(strings.numberOf(value)) };
}

const errors = ["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"];
/** Errors younger than the format, which has none of its own for them. */
const youngErrors = [
  "#SPILL!",
  "#CALC!",
  "#FIELD!",
  "#BLOCKED!",
  "#CONNECT!",
  "#BUSY!",
  "#UNKNOWN!",
];

function errorInFile(text: string): string | undefined {
  if (errors.includes(text)) return text;
  return youngErrors.includes(text) ? "#VALUE!" : undefined;
}
