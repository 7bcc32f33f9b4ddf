import { columnNumber, LAST_COLUMN, LAST_ROW, parseCell, type Area } from "./address";
import type { Token } from "./tokens";

/** The cells that one piece of a formula names: a cell, whole columns or whole rows. */
export function areaOfToken({ kind, text }: Token): Area | undefined {
  if (kind === "cell") {
    const at = parseCell(text);
    return at && { startRow: at.row, startColumn: at.column, endRow: at.row, endColumn: at.column };
  }
  if (kind !== "columns" && kind !== "rows") return undefined;
  const numberOf = (side: string) => (kind === "columns" ? columnNumber(side) : Number(side) - 1);
  const sides = text.replaceAll("$", "").split(":").map(numberOf);
  const [first, last] = [Math.min(...sides), Math.max(...sides)];
  return kind === "columns"
    ? { startRow: 0, startColumn: first, endRow: LAST_ROW, endColumn: last }
    : { startRow: first, startColumn: 0, endRow: last, endColumn: LAST_COLUMN };
}

/** The smallest area with both in it. */
export function around(one: Area, other: Area): Area {
  return {
    startRow: Math.min(one.startRow, other.startRow),
    startColumn: Math.min(one.startColumn, other.startColumn),
    endRow: Math.max(one.endRow, other.endRow),
    endColumn: Math.max(one.endColumn, other.endColumn),
  };
}

export const isSameArea = (one: Area, other: Area): boolean =>
  one.startRow === other.startRow &&
  one.startColumn === other.startColumn &&
  one.endRow === other.endRow &&
  one.endColumn === other.endColumn;
