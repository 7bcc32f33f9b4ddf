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
  const rows = labels.cells.length;
  const there = Array.from({ length: rows }, (_row, row) => row).filter(counts);
  const groupOf = new Int32Array(rows).fill(-1);
  for (const row of there) groupOf[row] = 0;

  // A column after the other splits the groups so far: a group and a label make a number, which is numbered anew.
  let groups = 1;
  labels.headings.forEach((_heading, column) => {
    const numberer = labelNumberer();
    const labelOf = new Int32Array(rows);
    for (const row of there) {
      const label = numberer.numberOf(labels.cells[row]?.[column]);
      if (label instanceof HostError) throw holdsError(label, row + firstRow - 1, name);
      labelOf[row] = label;
    }
    const size = numberer.size();
    const renumber = renumberer(groups * size);
    // Both have a number for every row.
    for (const row of there) groupOf[row] = renumber.numberOf(groupOf[row]! * size + labelOf[row]!);
    groups = renumber.size();
  });

  const keys: (number | string)[][] = [];
  labels.cells.forEach((cells, row) => {
    if (groupOf[row] === keys.length) keys.push(cells.map(keyContent));
  });
  return { headings: labels.headings.map((heading) => heading ?? "by"), keys, groupOf };
}

/** What is in each group: its keys, and its rows in their order. */
export function groupsIn({ keys, groupOf }: Groups) {
  const groups = keys.map((key) => ({ key, rows: [] as number[] }));
  groupOf.forEach((group, row) => groups[group]?.rows.push(row));
  return groups;
}

/** Numbers labels from 0 by first appearance; an error in a cell comes back as it is. */
function labelNumberer() {
  const byIdentity = new Map<string, number>();
  const byCell = new Map<unknown, number>();
  return {
    numberOf(raw: unknown): number | HostError {
      const known = byCell.get(raw);
      if (known !== undefined) return known;
      const value = readCell(raw);
      if (value instanceof HostError) return value;
      const identity = labelIdentity(value);
      const number = byIdentity.get(identity) ?? byIdentity.size;
      byIdentity.set(identity, number);
      // An object is no label of its own: each cell has another one, and they would pile up.
      if (typeof raw !== "object") byCell.set(raw, number);
      return number;
    },
    size: () => byIdentity.size,
  };
}

/** As many numbers fit into a plain table; past that it would be mostly empty. */
const LARGEST_TABLE = 2 ** 20;

/** Numbers numbers below `limit` anew, from 0 by first appearance. */
function renumberer(limit: number) {
  let size = 0;
  if (limit <= LARGEST_TABLE) {
    const table = new Int32Array(limit).fill(-1);
    return {
      numberOf(old: number) {
        const known = table[old] ?? -1;
        return known === -1 ? (table[old] = size++) : known;
      },
      size: () => size,
    };
  }
  const table = new Map<number, number>();
  return {
    numberOf(old: number) {
      const known = table.get(old);
      if (known !== undefined) return known;
      table.set(old, size);
      return size++;
    },
    size: () => size,
  };
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
