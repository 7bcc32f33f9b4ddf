import { columnNumber, type Area } from "../formula/address";

/**
 * Reads a cell's address or a range's, "B4" or "A4:F9"; rows and columns count from 0. Whole
 * columns ("A", "B:D") and rows ("1", "2:5") leave the other side open (`NaN`).
 */
export function parseRange(address: string): Area {
  const [from = "", to = from] = address.split(":");
  const first = parseCorner(from);
  const last = parseCorner(to);
  return {
    startRow: first.row,
    startColumn: first.column,
    endRow: last.row,
    endColumn: last.column,
  };
}

function parseCorner(corner: string): { row: number; column: number } {
  const match = /^([A-Z]*)([1-9]\d*)?$/.exec(corner);
  if (!match || corner === "") throw new Error(`"${corner}" is not an address`);
  const [, letters = "", digits] = match;
  return {
    row: digits === undefined ? NaN : Number(digits) - 1,
    column: letters === "" ? NaN : columnNumber(letters),
  };
}
