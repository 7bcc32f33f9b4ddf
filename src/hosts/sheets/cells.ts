import { CellError, onlyCell, type Content, type Grid } from "../../cells";
import { isDate, serialNumberIn } from "./dates";

/** What Sheets takes back: one cell's value, or rows of them. */
export type SheetsResult = number | string | (number | string)[][];

/**
 * The arguments of a call as our functions read them. Sheets passes one cell as its value, a range as rows, a
 * blank as "" and an argument left out as `undefined`, all of which the cell layer knows; only a date needs
 * to be told the spreadsheet's time zone, which is asked for when there is a date to be read.
 */
export function readArguments(
  args: readonly unknown[],
  timeZone: () => string | undefined,
): unknown[] {
  if (!args.some(holdsDate)) return [...args];
  const zone = timeZone();
  if (zone === undefined) return [...args];
  const serialNumber = serialNumberIn(zone);
  const read = (cell: unknown) =>
    isDate(cell) && Number.isFinite(cell.getTime()) ? serialNumber(cell) : cell;
  return args.map((argument) =>
    isRange(argument) ? argument.map((row) => row.map(read)) : read(argument),
  );
}

/** A range comes as rows of cells. */
const isRange = (argument: unknown): argument is unknown[][] =>
  Array.isArray(argument) && argument.every(Array.isArray);

const holdsDate = (argument: unknown) =>
  isRange(argument) ? argument.some((row) => row.some(isDate)) : isDate(argument);

/**
 * A result as Sheets takes it. A call that is nothing but an error throws it, and Sheets shows its message with
 * #ERROR!. No array can hold an error there, so beside other results one is text that starts with "! ".
 */
export function writeResult(grid: Grid): SheetsResult {
  const content = onlyCell(grid);
  if (content === undefined) return grid.map((row) => row.map(inArray));
  if (content instanceof CellError) throw new Error(content.message);
  return content;
}

const inArray = (content: Content) =>
  content instanceof CellError ? `! ${content.message}` : content;
