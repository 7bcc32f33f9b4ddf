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
  const references: Shift[] = [];
  // What stands before each of them, and behind the last.
  const between: string[] = [""];
  for (const { kind, text } of tokensOf(formula)) {
    if (kind === "cell" || kind === "columns" || kind === "rows") {
      references.push(shiftOf(text));
      between.push("");
    } else between[between.length - 1] += text;
  }
  const [start = "", ...behind] = between;
  if (references.length === 0) return () => formula;
  return (down, right) => {
    if (down === 0 && right === 0) return formula;
    let text = start;
    for (const [at, shift] of references.entries()) text += shift(down, right) + behind[at];
    return text;
  };
}

type Shift = (down: number, right: number) => string;

/** A reference to a cell, whole columns or whole rows, ready to be moved. */
function shiftOf(text: string): Shift {
  const [first, last] = text.split(":").map(sideOf);
  return (down, right) => {
    const start = first!(down, right);
    const shifted = last ? `${start}:${last(down, right)}` : start;
    return shifted.includes(OUTSIDE) ? "#REF!" : shifted;
  };
}

function sideOf(text: string): Shift {
  const [, fixedColumn = "", letters = "", fixedRow = "", digits = ""] = SIDE.exec(text)!;
  const number = letters && columnNumber(letters);
  const line = Number(digits) - 1;
  const columnAt = (right: number) =>
    number === "" ? "" : fixedColumn + shiftColumn(number, fixedColumn ? 0 : right);
  const columnHere = columnAt(0);
  return (down, right) => {
    const column = right === 0 ? columnHere : columnAt(right);
    return digits ? column + fixedRow + shiftRow(line, fixedRow ? 0 : down) : column;
  };
}

const SIDE = /^(?:(\$?)([A-Za-z]{1,3}))?(\$?)(\d*)$/;

/** Stands for a row or a column that no sheet has. */
const OUTSIDE = "!";

function shiftColumn(number: number, by: number): string {
  const column = number + by;
  return column < 0 || column > LAST_COLUMN ? OUTSIDE : columnLetters(column);
}

function shiftRow(line: number, by: number): string {
  const row = line + by;
  return row < 0 || row > LAST_ROW ? OUTSIDE : String(row + 1);
}
