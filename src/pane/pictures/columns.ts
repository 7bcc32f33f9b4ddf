import { isHeading, readCell, widthOf } from "../../cells";
import { Unreadable, type Cells } from "./picture";

/** A column that a picture needs, and how people head it. */
export interface Wanted {
  /** As messages and help name it. */
  readonly name: string;
  /** The headings it is known by. */
  readonly headed: RegExp;
  readonly optional?: true;
}

/** The columns of a selection that a picture asked for, each with its heading row if there is one. */
export interface Dealt<K extends string> {
  readonly columns: Readonly<Record<K, unknown[][] | undefined>>;
  readonly headings: Readonly<Record<K, string | undefined>>;
}

/**
 * Finds the wanted columns by their headings, wherever they stand in the selection. Without such
 * headings the selection must be just these columns, in order.
 */
export function dealColumns<K extends string>(
  values: Cells,
  wanted: Readonly<Record<K, Wanted>>,
): Dealt<K> {
  const cells = withoutBlankEdges(values);
  if (cells.length === 0) {
    throw new Unreadable(`the selection is empty; expected ${listOf(wanted)}`);
  }
  const places = byHeading(cells, wanted) ?? inOrder(cells, wanted);
  const headings = headingsOf(cells);
  const columns = {} as Record<K, unknown[][] | undefined>;
  const names = {} as Record<K, string | undefined>;
  for (const key of keysOf(wanted)) {
    const place = places.get(key);
    columns[key] = place === undefined ? undefined : cells.map((row) => [row[place]]);
    names[key] = place === undefined ? undefined : headings?.[place];
  }
  return { columns, headings: names };
}

/** Whether the headings alone find every wanted column that is not optional. */
export const hasHeadings = <K extends string>(
  values: Cells,
  wanted: Readonly<Record<K, Wanted>>,
): boolean => byHeading(withoutBlankEdges(values), wanted) !== undefined;

function byHeading<K extends string>(
  cells: Cells,
  wanted: Readonly<Record<K, Wanted>>,
): Map<K, number> | undefined {
  const headings = headingsOf(cells);
  if (headings === undefined) return undefined;
  const places = new Map<K, number>();
  for (const key of keysOf(wanted)) {
    const taken = [...places.values()];
    const place = headings.findIndex(
      (heading, at) => !taken.includes(at) && wanted[key].headed.test(heading),
    );
    if (place !== -1) places.set(key, place);
    else if (!wanted[key].optional) return undefined;
  }
  return places;
}

function inOrder<K extends string>(
  cells: Cells,
  wanted: Readonly<Record<K, Wanted>>,
): Map<K, number> {
  const keys = keysOf(wanted);
  const needed = keys.filter((key) => !wanted[key].optional).length;
  const width = widthOf(cells);
  if (width < needed || width > keys.length) {
    const found = `found ${width} column${width === 1 ? "" : "s"}`;
    throw new Unreadable(
      `${found}; expected ${listOf(wanted)}, under these names or in this order`,
    );
  }
  return new Map(keys.slice(0, width).map((key, place) => [key, place]));
}

/** The headings, if the first row is text wherever it is not blank. */
export function headingsOf(cells: Cells): string[] | undefined {
  const [first, ...rest] = cells;
  if (first === undefined || rest.length === 0) return undefined;
  const filled = first.filter((cell) => readCell(cell) !== null);
  if (filled.length === 0 || !filled.every(isHeading)) return undefined;
  return first.map((cell) => textOf(cell));
}

/** Without blank rows at the end and without blank columns, which reports leave between them. */
export function withoutBlankEdges(values: Cells): Cells {
  const isBlank = (cell: unknown) => readCell(cell) === null;
  const filled = values.map((row) => !row.every(isBlank));
  const rows = values.slice(0, filled.lastIndexOf(true) + 1);
  const width = Math.max(0, ...rows.map((row) => row.length));
  const kept = Array.from({ length: width }, (_, at) => at).filter((at) =>
    rows.some((row) => !isBlank(row[at])),
  );
  return rows.map((row) => kept.map((at) => row[at] ?? null));
}

/** A label's text, as the sheet shows it; "" for a blank. */
export function textOf(cell: unknown): string {
  const value = readCell(cell);
  return typeof value === "string" || typeof value === "number" ? String(value).trim() : "";
}

/** The unit at the end of a heading: "load, kg", "load (kg)" and "load kg" are in kg. */
export function unitIn(heading: string | undefined): string | undefined {
  const found =
    /[,(]\s*([^,()\d]{1,12}?)\)?\s*$/.exec(heading ?? "") ?? BARE_UNIT.exec(heading ?? "");
  return found?.[1];
}

const BARE_UNIT = /\s(kg|lbs?|W|N|cm|m|s|ms|reps)\s*$/;

const keysOf = <K extends string>(wanted: Readonly<Record<K, Wanted>>) =>
  Object.keys(wanted) as K[];

/** "date, load, reps (and reserve if you have it)", as a message names them. */
function listOf<K extends string>(wanted: Readonly<Record<K, Wanted>>): string {
  const all = Object.values<Wanted>(wanted);
  const needed = all.filter(({ optional }) => !optional).map(({ name }) => name);
  const extra = all.filter(({ optional }) => optional).map(({ name }) => name);
  const main = `the columns ${needed.join(", ")}`;
  return extra.length === 0 ? main : `${main} (and ${extra.join(", ")} if you have it)`;
}
