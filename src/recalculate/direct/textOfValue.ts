import { isError, type CellValue } from "../../xlsx/model";

/** A cell's text, in which a number has the 15 digits that a spreadsheet gives it. */
export function textOfValue(value: CellValue): string {
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "string") return value;
  return String(Number(value.toPrecision(15)));
}

/** Two values joined by "&"; nothing where programs write one of them differently. */
export function joined(one: CellValue, other: CellValue): string | undefined {
  return isWrittenAlike(one) && isWrittenAlike(other)
    ? textOfValue(one) + textOfValue(other)
    : undefined;
}

/** Very large and very small numbers are written with an exponent, or not. */
function isWrittenAlike(value: CellValue): boolean {
  if (typeof value === "number") {
    return value === 0 || (Math.abs(value) >= 1e-4 && Math.abs(value) < 1e10);
  }
  return typeof value !== "boolean" && !isError(value);
}
