import { areaAddress, cellAddress } from "../../formula/address";
import type { CellModel } from "../model";
import { escapeXml, writeXml } from "../package";
import { toFileText } from "../strings";

/** Gives every text of a workbook a number, under which cells name it. */
export interface SharedStrings {
  numberOf(text: string): number;
}

/** Which of the parts' entries marks a formula as one that spills. */
export const SPILLS_MARK = 1;

/**
 * Writes a cell in the look of this number, or nothing where there is nothing to say of it. A cell
 * over which another one's result spilled holds what a formula answered with.
 */
export function writeCell(
  { row, column, value, formula }: CellModel,
  look: number,
  spilled: boolean,
  strings: SharedStrings,
): string {
  const r = cellAddress(row, column);
  const s = look > 0 ? look : undefined;
  const empty = value === null || (value === "" && !spilled && !formula);
  const { t, v } = empty
    ? { t: undefined, v: "" }
    : writeValue(value, spilled || formula ? undefined : strings);
  const written = empty ? "" : `<v>${v}</v>`;
  if (!formula) return empty && s === undefined ? "" : writeXml("c", { r, s, t }, written);

  const array = formula.kind === "one cell" ? {} : { t: "array", ref: areaAddress(formula.area) };
  const f = writeXml("f", array, escapeXml(formula.text));
  const cm = formula.kind === "spilling" ? SPILLS_MARK : undefined;
  return writeXml("c", { r, s, t, cm }, f + written);
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

const ERRORS = ["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"];
/** Errors younger than the format, which has none of its own for them. */
const YOUNG_ERRORS = [
  "#SPILL!",
  "#CALC!",
  "#FIELD!",
  "#BLOCKED!",
  "#CONNECT!",
  "#BUSY!",
  "#UNKNOWN!",
];

function errorInFile(text: string): string | undefined {
  if (ERRORS.includes(text)) return text;
  return YOUNG_ERRORS.includes(text) ? "#VALUE!" : undefined;
}
