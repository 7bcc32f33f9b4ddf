import { columnLetters, columnNumber, LAST_COLUMN, LAST_ROW } from "./address";
import { tokensOf } from "./tokens";

/**
 * The formula as it reads so many rows further down and columns further right. Cells that share a
 * formula keep it once in the file, as it reads in the first of them.
 */
export const shiftFormula = (formula: string, down: number, right: number): string =>
  shifterOf(formula)(down, right);

/** The same of one formula for many cells: it is taken apart once. */
export function shifterOf(formula: string): (down: number, right: number) => string {
  const pieces: string[] = [""];
  // Pieces at odd places are references, and those before and after them stay as they are.
  for (const { kind, text } of tokensOf(formula)) {
    if (kind === "cell" || kind === "columns" || kind === "rows") pieces.push(text, "");
    else pieces[pieces.length - 1] += text;
  }
  if (pieces.length === 1) return () => formula;
  return (down, right) =>
    down === 0 && right === 0
      ? formula
      : pieces
          .map((text, at) => (at % 2 === 1 ? shiftReference(text, down, right) : text))
          .join("");
}

function shiftReference(text: string, down: number, right: number): string {
  const shifted = text.replace(REFERENCE, (_, fixedColumn, letters, fixedRow, digits) => {
    const column = letters === undefined ? "" : shiftColumn(letters, fixedColumn ? 0 : right);
    const row = digits === undefined ? "" : shiftRow(digits, fixedRow ? 0 : down);
    return (fixedColumn ?? "") + column + (fixedRow ?? "") + row;
  });
  return shifted.includes(OUTSIDE) ? "#REF!" : shifted;
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
