import { columnLetters, columnNumber, LAST_COLUMN, LAST_ROW } from "./address";
import { tokensOf } from "./tokens";

/**
 * The formula as it reads so many rows further down and columns further right. Cells that share a
 * formula keep it once in the file, as it reads in the first of them.
 */
export function shiftFormula(formula: string, down: number, right: number): string {
  if (down === 0 && right === 0) return formula;
  return tokensOf(formula)
    .map(({ kind, text }) => {
      if (kind !== "cell" && kind !== "columns" && kind !== "rows") return text;
      const shifted = text.replace(REFERENCE, (_, fixedColumn, letters, fixedRow, digits) => {
        const column = letters === undefined ? "" : shiftColumn(letters, fixedColumn ? 0 : right);
        const row = digits === undefined ? "" : shiftRow(digits, fixedRow ? 0 : down);
        return (fixedColumn ?? "") + column + (fixedRow ?? "") + row;
      });
      return shifted.includes(OUTSIDE) ? "#REF!" : shifted;
    })
    .join("");
}

const REFERENCE = /(?:(\$)?([A-Za-z]{1,3}))?(?:(\$)?(\d+))?/g;

/** Stands for a row or a column that no sheet has. */
const OUTSIDE = "!";

function shiftColumn(letters: string, by: number): string {
  const column = columnNumber(letters) + by;
  return column < 0 || column > LAST_COLUMN ? OUTSIDE : columnLetters(column);
}

function shiftRow(digits: string, by: number): string {
  const row = Number(digits) - 1 + by;
  return row < 0 || row > LAST_ROW ? OUTSIDE : String(row + 1);
}
