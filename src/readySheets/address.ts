import type { IRange } from "@univerjs/core";

/**
 * Reads a cell's address or a range's, "B4" or "A4:F9"; rows and columns count from 0. Whole
 * columns ("A", "B:D") and rows ("1", "2:5") leave the other side open (`NaN`).
 */
export function parseRange(address: string): IRange {
  const [first, last = first] = address.split(":").map(parseCorner);
  if (first === undefined) throw new Error(`"${address}" is not an address`);
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
  const [, letters, digits] = match;
  return {
    row: digits === undefined ? NaN : Number(digits) - 1,
    column: letters === "" ? NaN : columnNumber(letters) - 1,
  };
}

/** "A" is 1, "Z" is 26, "AA" is 27. */
function columnNumber(letters: string): number {
  return [...letters].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);
}
