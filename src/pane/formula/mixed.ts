import type { Parameter } from "../../functions/catalogue";
import type { Headings } from "../data";
import type { Selection } from "../port";
import { plainHeading, titlesOf } from "./headings";
import { columnOf, referenceTo } from "./reference";

/** A column of names beside the sets: a lifter's, or a lift's. */
export interface MixedColumn {
  readonly heading: string;
  /** Its place in the selection. */
  readonly column: number;
  readonly reference: string;
  readonly names: readonly (string | number)[];
}

/** A column that tells rows apart which do not belong into one answer: whose they are, or of which lift. */
export type Telling = "lifter" | "exercise";

const BOTH: readonly Telling[] = ["lifter", "exercise"];

/**
 * The columns of a selection by which a function of one lifter's sets in one lift would mix several: a trend, or the
 * curve of one lifter. Functions that answer for all (`by`), or row by row, mix nothing.
 */
export const mixedColumns = (
  parameters: readonly Parameter[],
  selection: Selection,
  headings: Headings,
): MixedColumn[] => (isForOneLifter(parameters) ? columnsOfSeveral(selection, headings) : []);

/** Load and reps of many sets, with confidence in what comes of them: a trend or a curve. */
function isForOneLifter(parameters: readonly Parameter[]): boolean {
  const has = (name: string) => parameters.some((parameter) => parameter.name === name);
  return has("load") && has("reps") && has("confidence") && !has("by");
}

/** The columns of lifters and of lifts that hold more than one name. */
export function columnsOfSeveral(
  { sheet, address, values }: Selection,
  headings: Headings,
  telling = BOTH,
): MixedColumn[] {
  const titles = titlesOf(values) ?? [];
  const wanted = new Set(telling.flatMap((name) => headings[name] ?? []));
  return titles.flatMap((heading, column) => {
    if (!wanted.has(plainHeading(heading))) return [];
    const names = differentNames(values.slice(1).map((row) => row[column]));
    const reference = referenceTo(sheet, columnOf(address, column, 1));
    return names.length > 1 ? [{ heading, column, reference, names }] : [];
  });
}

/** Each name once, whether it is written large or small: so a spreadsheet compares them. */
function differentNames(cells: readonly unknown[]): (string | number)[] {
  const names = new Map<string | number, string | number>();
  for (const cell of cells) {
    if (!isName(cell)) continue;
    const key = typeof cell === "string" ? cell.toLowerCase() : cell;
    if (!names.has(key)) names.set(key, cell);
  }
  return [...names.values()];
}

const isName = (cell: unknown): cell is string | number =>
  (typeof cell === "string" && cell.trim() !== "") || typeof cell === "number";

/** Whether a cell holds that name, as a spreadsheet's `=` compares. */
export const isSameName = (cell: unknown, name: string | number): boolean =>
  typeof cell === "string" && typeof name === "string"
    ? cell.toLowerCase() === name.toLowerCase()
    : cell === name;
