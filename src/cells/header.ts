import { topRow, type Range } from "./grid";
import { isHeadingText } from "./text";
import { readCell } from "./value";

/**
 * Whether the first row of these columns, read row by row, is a header: text in every one of them. Single cells
 * and single rows have no header, so they are not asked.
 */
export function hasHeaderRow(columns: readonly Range[]): boolean {
  const tall = columns.filter((column) => column.rows > 1);
  return tall.length > 0 && tall.every((column) => topRow(column).every(isHeading));
}

/** Whether this cell's content can head a column. */
export function isHeading(raw: unknown): boolean {
  const value = readCell(raw);
  return typeof value === "string" && isHeadingText(value);
}

/** Whether it can head a column of labels, which may also be left blank: desktop Excel passes that as 0. */
export function canHeadLabels(raw: unknown): boolean {
  const value = readCell(raw);
  return value === null || value === 0 || isHeading(raw);
}
