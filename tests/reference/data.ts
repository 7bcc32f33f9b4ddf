import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";

/** What one cell or one value of a report should be. */
export type ExpectedValue = number | string | ExpectedError;

export interface ExpectedError {
  readonly error: "#VALUE!" | "#N/A";
  /** A pattern the message must hold. */
  readonly message?: string;
}

/** How exact a value is; README.md of the data says what each means. */
export type Match =
  | "exact"
  | "tight"
  | "iter"
  | "trend"
  | number
  | { readonly print: number | Readonly<Record<string, number>> }
  | { readonly within: number };

/** Cells as they are; `null` is one that the source does not give. */
export type ExpectedGrid = readonly (readonly (ExpectedValue | null)[])[];

/** The rows under the heading row of a table. */
export interface ExpectedTable {
  readonly table: readonly (readonly ExpectedValue[])[];
}

/** Some rows of a table by number, the heading row being 0, of so many. */
export interface ExpectedRows {
  readonly rowsOfTable: Readonly<Record<string, readonly ExpectedValue[]>>;
  readonly of: number;
}

export interface ExpectedProperty {
  readonly property: string;
}

/** Values of a report by their labels. */
export type ExpectedParts = Readonly<Record<string, ExpectedValue>>;

export type Expected =
  ExpectedValue | ExpectedGrid | ExpectedTable | ExpectedRows | ExpectedProperty | ExpectedParts;

/** One published value of one function. */
export interface Row {
  readonly function: string;
  /** A single value, rows of cells, or `null` where the argument is omitted. */
  readonly arguments: readonly unknown[];
  readonly expected: Expected;
  readonly match: Match;
  /** The shape of a result with several parts when `part` is omitted; a report unless it says otherwise. */
  readonly whole?: "row" | "table";
  /** What the result is multiplied by before it is compared, where the source prints another unit. */
  readonly resultTimes?: number;
  readonly source: string;
  readonly mark: string;
  readonly note?: string;
}

const FOLDER = join(import.meta.dirname, "../../shared/reference");

/** A file of the reference data by its name without the ending. */
export function readReference(name: string): unknown {
  return JSON.parse(readFileSync(join(FOLDER, `${name}.json`), "utf8"));
}

/** The names of all files of the reference data. */
export const referenceFiles = () =>
  readdirSync(FOLDER)
    .filter((file) => file.endsWith(".json"))
    .map((file) => basename(file, ".json"));
