import { holdsError, type Labels } from "./rows";
import { HostError, readCell, type CellValue } from "./value";

/** Rows gathered under their keys, in order of first appearance. */
export interface Groups {
  /** The headings of the key columns: the data's own, "by" where there is no header row. */
  readonly headings: readonly string[];
  /** The keys of each group, untouched: as its first row has them. */
  readonly keys: readonly (readonly (number | string)[])[];
  /** The group of each row; -1 for a row that was left out. */
  readonly groupOf: Int32Array;
}

/** What separates the parts of a compound key: no cell's text holds it. */
const SEPARATOR = "\u0000";

/**
 * Gathers rows under their keys. Two keys are the same as a spreadsheet compares them: case and outer blanks
 * aside. Rows that `counts` refuses open no group of their own.
 */
export function groupRows(
  labels: Labels,
  counts: (row: number) => boolean,
  firstRow: number,
  name: string,
): Groups {
  const width = labels.headings.length;
  const groupOf = new Int32Array(labels.cells.length).fill(-1);
  const numbers = new Map<string, number>();
  const keys: (number | string)[][] = [];
  for (let row = 0; row < labels.cells.length; row++) {
    if (!counts(row)) continue;
    const cells = labels.cells[row];
    let identity = "";
    for (let column = 0; column < width; column++) {
      const value = readCell(cells[column]);
      if (value instanceof HostError) throw holdsError(value, row + firstRow - 1, name);
      identity += (column > 0 ? SEPARATOR : "") + labelIdentity(value);
    }
    let group = numbers.get(identity);
    if (group === undefined) {
      group = keys.length;
      numbers.set(identity, group);
      keys.push(cells.map(keyContent));
    }
    groupOf[row] = group;
  }
  return { headings: labels.headings.map((heading) => heading ?? "by"), keys, groupOf };
}

/** What two labels share when a spreadsheet takes them for the same. */
export function labelIdentity(value: CellValue): string {
  if (value === null) return "";
  return typeof value === "string" ? value.trim().toLowerCase() : String(value);
}

/** A key as it goes back into a cell. */
export function keyContent(raw: unknown): number | string {
  const value = readCell(raw);
  if (typeof value === "number" || typeof value === "string") return value;
  return value === null || value instanceof HostError ? "" : value ? "TRUE" : "FALSE";
}
