import { readCell } from "../cells";

/** A sheet's values, row by row. */
export type Cells = readonly (readonly unknown[])[];

export interface Place {
  readonly row: number;
  readonly column: number;
}

/** The text of a cell without outer blanks; "" where there is none. */
export function textAt(cells: Cells, place: Place | undefined): string {
  if (!place) return "";
  const value = readCell(cells[place.row]?.[place.column]);
  return typeof value === "string" || typeof value === "number" ? String(value).trim() : "";
}

/** The first place where these words stand side by side, whatever their case. */
export function findHeading(cells: Cells, words: readonly string[]): Place | undefined {
  for (const [row, line] of cells.entries()) {
    for (const column of line.keys()) {
      const heads = words.every(
        (word, offset) => textAt(cells, { row, column: column + offset }).toLowerCase() === word,
      );
      if (heads) return { row, column };
    }
  }
  return undefined;
}

/** The cell to the right of a label; the label may end in its unit ("bar, kg"). */
export function findSetting(cells: Cells, label: string): Place | undefined {
  for (const [row, line] of cells.entries()) {
    for (const column of line.keys()) {
      const text = textAt(cells, { row, column }).toLowerCase();
      if (text === label || text.startsWith(`${label},`)) return { row, column: column + 1 };
    }
  }
  return undefined;
}
