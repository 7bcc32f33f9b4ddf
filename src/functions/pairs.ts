import { readRows, type NumberColumn, type Quantity } from "../cells";
import * as quantities from "./quantities";

/** Rows of several columns, whole ones only, and how many were left out. */
export interface WholeRows<K extends string> {
  readonly columns: Readonly<Record<K, number[]>>;
  /** How many rows hold something but not everything; a wholly blank row is not there. */
  readonly dropped: number;
  /** How many rows were given, blank ones too. */
  readonly given: number;
}

/** Reads columns that belong together and keeps the rows that have a number in each. */
export function readWholeRows<K extends string>(
  inputs: Readonly<Record<K, { given: unknown; quantity: Quantity }>>,
): WholeRows<K> {
  const rows = readRows(inputs);
  const keys = Object.keys(inputs) as K[];
  const columns = Object.fromEntries(keys.map((key) => [key, [] as number[]])) as Record<
    K,
    number[]
  >;
  let dropped = 0;
  for (let row = 0; row < rows.count; row++) {
    const values = keys.map((key) => valueAt(rows.numbers[key], row));
    if (values.every((value) => value !== null)) {
      keys.forEach((key, i) => columns[key].push(values[i]!));
    } else if (rows.isThere(row)) {
      dropped++;
    }
  }
  return { columns, dropped, given: rows.count };
}

/** Scores before and after, a row an athlete: pairs with both. */
export const readPairs = (before: unknown, after: unknown) =>
  readWholeRows({
    before: { given: before ?? "", quantity: quantities.score("before") },
    after: { given: after ?? "", quantity: quantities.score("after") },
  });

const valueAt = (column: NumberColumn | undefined, row: number) => column?.[row] ?? null;
