import { matchWord, listed, type Choices } from "./choice";
import { keysOf } from "./entries";
import { CellError, invalid, notAvailable } from "./error";
import {
  firstCell,
  isSingle,
  onlyCell,
  toRange,
  widthOf,
  type Content,
  type Grid,
  type Range,
} from "./grid";
import { commonShape, liftOver, type Arguments, type Lifted, type Values } from "./lift";
import { passOn } from "./quantity";
import { quoted } from "./text";
import { HostError, readCell } from "./value";

/** One value of a report; one that does not exist for the data says why. */
export type Part = number | string | { readonly absent: string };

/**
 * A function with several results names them in a string enum, whose members are the keys of the result object
 * and whose words are the labels in the sheet: `meanChange = "mean change"`.
 */
export type Parts<C extends Choices> = { readonly [K in keyof C]: Part };

/** A report in two columns, label and value; or, where `part` names some of its labels, just those values. */
export function report<C extends Choices>(labels: C, part: unknown, values: Parts<C>): Grid {
  return partsOr(labels, part, values, () => labelled(labels, values));
}

/** The named parts; or, where `part` names none, the function's own whole: a table. */
export function partsOr<C extends Choices>(
  labels: C,
  part: unknown,
  values: Parts<C>,
  whole: () => Grid,
): Grid {
  const wanted = readParts(labels, part);
  return wanted === undefined ? whole() : wanted.map((row) => row.map((key) => pick(values, key)));
}

/**
 * A report made of single values: in two columns for one set of inputs, and lifted over ranges where `part` is
 * one label (or several across, beside a column of inputs).
 */
export function liftReport<A extends Arguments, C extends Choices>(
  inputs: A,
  labels: C,
  part: unknown,
  compute: (values: Values<A>) => Parts<C>,
): Grid {
  const wanted = readParts(labels, part);
  if (wanted !== undefined) return spread(liftOver(inputs, compute), wanted);
  const { rows, columns } = commonShape(Object.values(inputs));
  if (rows > 1 || columns > 1) {
    throw invalid(`part is left out; expected one for a range: ${listed(Object.values(labels))}`);
  }
  const values = onlyCell(liftOver(inputs, compute)) ?? null;
  if (values === null || values instanceof CellError) return [[values ?? ""]];
  return labelled(labels, values);
}

/** A function whose result is a row of values: a row for each row of inputs, or the parts that are named. */
export function liftRow<A extends Arguments, C extends Choices>(
  inputs: A,
  labels: C,
  part: unknown,
  compute: (values: Values<A>) => Parts<C>,
): Grid {
  const wanted = readParts(labels, part);
  if (wanted !== undefined) return spread(liftOver(inputs, compute), wanted);
  if (commonShape(Object.values(inputs)).columns > 1) {
    throw invalid(
      `part is left out; expected one for inputs across columns: ${listed(Object.values(labels))}`,
    );
  }
  return liftOver(inputs, compute).map(([values = null]) =>
    keysOf(labels).map((key) => {
      if (values === null || values instanceof CellError) return values ?? "";
      return shown(values[key]);
    }),
  );
}

function labelled<C extends Choices>(labels: C, values: Parts<C>): Grid {
  return keysOf(labels).map((key) => [labels[key] ?? "", shown(values[key])]);
}

/** In a report a value that does not exist is an empty cell; asked for alone, it is #N/A with the reason. */
const shown = (part: Part): Content => (typeof part === "object" ? "" : part);

type Key<C extends Choices> = keyof C | null | CellError;

function pick<C extends Choices>(values: Parts<C>, key: Key<C>): Content {
  if (key === null || key instanceof CellError) return key ?? "";
  const part = values[key];
  return typeof part === "object" ? notAvailable(part.absent) : part;
}

/** Whether a `part` argument names any part: a blank cell does not. */
export function namesParts(part: unknown): boolean {
  const range = toRange(part);
  const value = readCell(firstCell(range));
  return !isSingle(range) || (value !== null && value !== 0);
}

/** The keys a `part` argument names, in its shape; a label that is none of them is an error in its place. */
function readParts<C extends Choices>(labels: C, part: unknown): Key<C>[][] | undefined {
  if (!namesParts(part)) return undefined;
  const range = toRange(part);
  const keys = range.cells.map((row) => row.map((raw) => readKey(labels, raw)));
  const key = onlyCell(keys);
  if (key instanceof CellError) throw key;
  return keys;
}

function readKey<C extends Choices>(labels: C, raw: unknown): Key<C> {
  const value = readCell(raw);
  if (value === null || value === 0) return null;
  if (value instanceof HostError) return passOn(value, "part");
  const words = Object.values(labels);
  const word = matchWord(String(value), words);
  const key = keysOf(labels).find((each) => labels[each] === word);
  if (key !== undefined) return key;
  return invalid(`part is ${quoted(String(value))}; expected ${listed(words)}`);
}

/** Lays the named parts over lifted inputs: one part in the inputs' shape, or parts across a column, or down a row. */
function spread<C extends Choices>(lifted: Lifted<Parts<C>>, wanted: Key<C>[][]): Grid {
  const inputs = sizeOfRows(lifted);
  const parts = sizeOfRows(wanted);
  const fits = (a: number, b: number) => a === 1 || b === 1;
  if (!fits(inputs.rows, parts.rows) || !fits(inputs.columns, parts.columns)) {
    throw invalid("part has several labels along the same direction as the inputs; expected one");
  }
  return Array.from({ length: Math.max(inputs.rows, parts.rows) }, (_row, row) =>
    Array.from({ length: Math.max(inputs.columns, parts.columns) }, (_column, column) => {
      const values = stretched(lifted, row, column) ?? null;
      if (values === null || values instanceof CellError) return values ?? "";
      return pick(values, stretched(wanted, row, column) ?? null);
    }),
  );
}

/** What stands at a place of rows that stretch: their last row and column go on. */
function stretched<T>(rows: readonly (readonly T[])[], row: number, column: number): T | undefined {
  const cells = rows[Math.min(row, rows.length - 1)];
  return cells?.[Math.min(column, cells.length - 1)];
}

const sizeOfRows = (rows: readonly (readonly unknown[])[]): Pick<Range, "rows" | "columns"> => ({
  rows: rows.length,
  columns: widthOf(rows),
});
