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

/**
 * Gathers rows under their keys. Two keys are the same as a spreadsheet compares them: case and outer blanks
 * aside. Rows that `counts` refuses open no group of their own.
 *
 * A log repeats few labels over many rows, so each label is read once and stands as a number from then on.
 */
export function groupRows(
  labels: Labels,
  counts: (row: number) => boolean,
  firstRow: number,
  name: string,
): Groups {
  const width = labels.headings.length;
  const numberers = labels.headings.map(() => labelNumberer());
  const groupOf = new Int32Array(labels.cells.length).fill(-1);
  const keys: (number | string)[][] = [];
  // Two numbers make a pair, a pair is numbered too, and so on: the number of the last pair is the group's.
  const pairs = labels.headings.map(() => new Map<number, number>());
  const most = labels.cells.length + 1;
  for (let row = 0; row < labels.cells.length; row++) {
    if (!counts(row)) continue;
    const cells = labels.cells[row];
    let group = 0;
    for (let column = 0; column < width; column++) {
      const label = numberers[column](cells[column]);
      if (label instanceof HostError) throw holdsError(label, row + firstRow - 1, name);
      group = numberOf(pairs[column], group * most + label);
    }
    if (group === keys.length) keys.push(cells.map(keyContent));
    groupOf[row] = group;
  }
  return { headings: labels.headings.map((heading) => heading ?? "by"), keys, groupOf };
}

/** Numbers labels from 0 by first appearance; an error in a cell comes back as it is. */
function labelNumberer(): (raw: unknown) => number | HostError {
  const byIdentity = new Map<string, number>();
  const byCell = new Map<unknown, number>();
  return (raw) => {
    const known = byCell.get(raw);
    if (known !== undefined) return known;
    const value = readCell(raw);
    if (value instanceof HostError) return value;
    const number = numberOf(byIdentity, labelIdentity(value));
    // An object is no label of its own: each cell has another one, and they would pile up.
    if (typeof raw !== "object") byCell.set(raw, number);
    return number;
  };
}

/** The number of a thing, from 0 by first appearance. */
function numberOf<T>(numbers: Map<T, number>, thing: T): number {
  const known = numbers.get(thing);
  if (known !== undefined) return known;
  numbers.set(thing, numbers.size);
  return numbers.size - 1;
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
