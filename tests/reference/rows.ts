import { join } from "node:path";
import { elementAt } from "../present";
import { readReference, referenceFiles, type Expected, type Row } from "./data";
import { effortScale } from "./effortScale";
import { equationTable } from "./equationTable";

/** Every reference row of every function, its data sets filled in. A new file of rows needs no line here. */
export function referenceRows(): Row[] {
  const stored = referenceFiles().flatMap((file) => {
    const content = readReference(file);
    return Array.isArray(content) ? (content as Row[]).filter((row) => "function" in row) : [];
  });
  return [...stored, ...equationTable.rows(), ...effortScale.rows()].map((row) => ({
    ...row,
    arguments: row.arguments.map(resolve),
    expected: resolve(row.expected) as Expected,
  }));
}

/** A named data set ("sleep.before" is `before` in data/sleep.json), changed as the row says. */
interface Named {
  readonly data: string;
  readonly root?: boolean;
  readonly times?: number;
  readonly plus?: number;
}

/** Data sets side by side, under headings if given. */
interface Columns {
  readonly columns: readonly string[];
  readonly headings?: readonly string[];
}

interface Repeated {
  readonly repeat: number;
  readonly rows: number;
}

function resolve(value: unknown): unknown {
  if (typeof value !== "object" || value === null) return value;
  if ("data" in value) return asGrid(changed(value as Named));
  if ("columns" in value) return sideBySide(value as Columns);
  if ("repeat" in value) {
    const { repeat, rows } = value as Repeated;
    return asGrid(Array<number>(rows).fill(repeat));
  }
  return value;
}

/** A named data set as it is stored. */
export function dataSet(name: string): unknown[] {
  const [file = name, ...path] = name.split(".");
  const content = readReference(file === "handbook" ? file : join("data", file));
  const found = path.reduce((at, key) => (at as Record<string, unknown>)[key], content);
  if (!Array.isArray(found)) throw new Error(`there is no data set "${name}"`);
  return found as unknown[];
}

function changed({ data, root = false, times = 1, plus = 0 }: Named): unknown[] {
  if (!root && times === 1 && plus === 0) return dataSet(data);
  return dataSet(data).map((value) => {
    const product = (root ? Math.sqrt(value as number) : (value as number)) * times;
    // A product of decimals (4.35 x 100) is meant as written, not as its binary neighbour.
    return (root ? product : Number(product.toPrecision(12))) + plus;
  });
}

/** A list is a column; rows of cells stay as they are. */
const asGrid = (values: unknown[]) =>
  values.map((value) => (Array.isArray(value) ? (value as unknown[]) : [value]));

function sideBySide({ columns, headings }: Columns): unknown[][] {
  const sets = columns.map(dataSet);
  const rows = elementAt(sets, 0).map((_value, row) => sets.map((set) => set[row]));
  return headings === undefined ? rows : [[...headings], ...rows];
}
