import {
  HostError,
  holdsError,
  invalid,
  keyContent,
  numberAt,
  readCell,
  readRows,
  type LabelInput,
  type Quantity,
} from "../cells";
import { zip } from "../core/zip";
import { blankUnlessGiven } from "./blankUnlessGiven";
import { isBlankLabel } from "./blankLabel";
import * as quantities from "./quantities";

/** Rows of several columns, whole ones only, and how many were left out. */
export interface WholeRows<K extends string, L extends string = never> {
  readonly columns: Readonly<Record<K, number[]>>;
  /** The labels beside these rows, `null` for a blank one; `undefined` where none were given. */
  readonly labels: Readonly<Record<L, Label[] | undefined>>;
  /** How many rows hold something but not everything; a wholly blank row is not there. */
  readonly dropped: number;
  /** How many rows were given, blank ones too. */
  readonly given: number;
}

/** What names a row, or nothing. */
export type Label = number | string | null;

/** Reads columns that belong together and keeps the rows that have a number in each. */
export function readWholeRows<K extends string, L extends string = never>(
  inputs: Readonly<Record<K, { given: unknown; quantity: Quantity }>>,
  labelInputs = {} as Readonly<Record<L, LabelInput>>,
): WholeRows<K, L> {
  const rows = readRows(inputs, labelInputs);
  const keys = Object.keys(inputs) as K[];
  const kept: number[] = [];
  const columns = Object.fromEntries(keys.map((key) => [key, [] as number[]])) as Record<
    K,
    number[]
  >;
  let dropped = 0;
  for (let row = 0; row < rows.count; row++) {
    const values = keys.map((key) => numberAt(rows.numbers[key], row));
    if (values.every((value) => value !== null)) {
      for (const [key, value] of zip(keys, values)) columns[key].push(value);
      kept.push(row);
    } else if (rows.isThere(row)) {
      dropped++;
    }
  }
  const labels = {} as Record<L, Label[] | undefined>;
  for (const key of Object.keys(labelInputs) as L[]) {
    const { name } = labelInputs[key];
    const column = rows.labels[key];
    if (column && column.headings.length > 1) {
      throw invalid(`${name} has ${column.headings.length} columns; expected one column`);
    }
    labels[key] =
      column && kept.map((row) => readLabel(column.cells[row]?.[0], row + rows.firstRow - 1, name));
  }
  return { columns, labels, dropped, given: rows.count };
}

function readLabel(raw: unknown, row: number, name: string): Label {
  const value = readCell(raw);
  if (value instanceof HostError) throw holdsError(value, row, name);
  return isBlankLabel(value) ? null : keyContent(raw);
}

/** Scores before and after, a row an athlete: pairs with both. */
export const readPairs = (before: unknown, after: unknown) =>
  readWholeRows({
    before: { given: blankUnlessGiven(before), quantity: quantities.score("before") },
    after: { given: blankUnlessGiven(after), quantity: quantities.score("after") },
  });
