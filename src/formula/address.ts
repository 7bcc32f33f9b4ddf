/** A rectangle of cells; rows and columns count from 0. */
export interface Area {
  readonly startRow: number;
  readonly startColumn: number;
  readonly endRow: number;
  readonly endColumn: number;
}

/** The farthest cell of a sheet is XFD1048576. */
export const LAST_ROW = 1_048_575;
export const LAST_COLUMN = 16_383;

/** A column by its letters: "C" is 2. */
export function columnNumber(letters: string): number {
  let number = 0;
  for (const letter of letters.toUpperCase()) number = number * 26 + letter.charCodeAt(0) - 64;
  return number - 1;
}

/** A column's letters: 2 is "C". */
export function columnLetters(column: number): string {
  let letters = "";
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}

/** A cell's address: `cellAddress(1, 2)` is "C2". */
export function cellAddress(row: number, column: number): string {
  return columnLetters(column) + String(row + 1);
}

/** An area's address, "B2:C9", or "B2" where it is one cell. */
export function areaAddress({ startRow, startColumn, endRow, endColumn }: Area): string {
  const start = cellAddress(startRow, startColumn);
  const end = cellAddress(endRow, endColumn);
  return start === end ? start : `${start}:${end}`;
}

const CELL_PATTERN = /^\$?([A-Za-z]{1,3})\$?(\d{1,7})$/;

/** A cell by its address; nothing where the text is none, or lies outside a sheet. */
export function parseCell(address: string): { row: number; column: number } | undefined {
  const [, letters, digits] = CELL_PATTERN.exec(address) ?? [];
  if (letters === undefined) return undefined;
  const row = Number(digits) - 1;
  const column = columnNumber(letters);
  return row < 0 || row > LAST_ROW || column > LAST_COLUMN ? undefined : { row, column };
}

/** An area by its address, "B2:C9" or "B2". */
export function parseArea(address: string): Area | undefined {
  const [from = "", to = from, ...more] = address.split(":");
  const start = parseCell(from);
  const end = parseCell(to);
  if (!start || !end || more.length > 0) return undefined;
  return {
    startRow: Math.min(start.row, end.row),
    startColumn: Math.min(start.column, end.column),
    endRow: Math.max(start.row, end.row),
    endColumn: Math.max(start.column, end.column),
  };
}

/** Whether a cell lies in an area. */
export function contains(area: Area, row: number, column: number): boolean {
  return (
    row >= area.startRow &&
    row <= area.endRow &&
    column >= area.startColumn &&
    column <= area.endColumn
  );
}

/** Whether all of one area lies in another. */
export function covers(outer: Area, inner: Area): boolean {
  return (
    outer.startRow <= inner.startRow &&
    outer.startColumn <= inner.startColumn &&
    outer.endRow >= inner.endRow &&
    outer.endColumn >= inner.endColumn
  );
}

export function isSeveralCells({ startRow, startColumn, endRow, endColumn }: Area): boolean {
  return endRow > startRow || endColumn > startColumn;
}

/** Every cell of an area, row by row. */
export function* cellsOf(area: Area): Generator<{ row: number; column: number }> {
  for (let row = area.startRow; row <= area.endRow; row++) {
    for (let column = area.startColumn; column <= area.endColumn; column++) yield { row, column };
  }
}

/**
 * What stands in the cells of an area, row by row. A list that grows makes room for 17 values with its first one, so
 * each row gets its size at once: a column can have a million of them.
 */
export function gridOf<T>(area: Area, valueAt: (row: number, column: number) => T): T[][] {
  const { startRow, startColumn, endRow, endColumn } = area;
  const rows = new Array<T[]>(endRow - startRow + 1);
  for (let row = startRow; row <= endRow; row++) {
    const values = new Array<T>(endColumn - startColumn + 1);
    for (let column = startColumn; column <= endColumn; column++) {
      values[column - startColumn] = valueAt(row, column);
    }
    rows[row - startRow] = values;
  }
  return rows;
}

/** Whether two areas have a cell in common. */
export function meet(one: Area, other: Area): boolean {
  return (
    one.startRow <= other.endRow &&
    other.startRow <= one.endRow &&
    one.startColumn <= other.endColumn &&
    other.startColumn <= one.endColumn
  );
}

/** A sheet's name that needs no quotes, as the source of a pattern. */
const PLAIN_NAME = String.raw`[\p{L}_][\p{L}\p{N}_.]*`;

/** What stands before a cell of another sheet, `Log!` or `'Week 1'!`, as the source of a pattern. */
export const SHEET_SOURCE = `(?:'(?:[^']|'')+'|${PLAIN_NAME})!`;

/** The name in what stands before a cell of another sheet: "'Week 1'!" is the sheet "Week 1". */
export function sheetIn(text: string): string {
  const name = text.slice(0, -1);
  return name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name;
}

const IS_PLAIN = new RegExp(`^${PLAIN_NAME}$`, "u");

/** A sheet's name as it stands before the "!" of a reference. */
export function quoteSheet(name: string): string {
  const plain = IS_PLAIN.test(name);
  const looksLikeCell = /^[A-Za-z]{1,3}\d+$/.test(name) || /^(?:r\d*c\d*|r\d*|c\d*)$/i.test(name);
  return plain && !looksLikeCell ? name : `'${name.replaceAll("'", "''")}'`;
}
