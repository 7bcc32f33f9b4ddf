import { numberAt, readRows, type NumberColumn } from "../../cells";
import * as quantities from "../quantities";

/** The columns of a log of sets, as they were given. */
interface SetColumns {
  readonly load: unknown;
  readonly reps: unknown;
  readonly reserve?: unknown;
  readonly date?: unknown;
  readonly by?: unknown;
}

/** A set of a log, and the row it stands on. */
interface ReadSet {
  readonly load: number;
  readonly reps: number;
  readonly reserve: number;
  readonly date: number;
  readonly row: number;
}

/** The sets of a log that are whole: a row with anything missing is no set to learn from. */
export function readSets(given: SetColumns): ReadSet[] {
  const { rows, setIn } = readSetRows(given);
  return Array.from({ length: rows.count }, (_, row) => setIn(row)).filter(
    (set) => set !== undefined,
  );
}

/** The rows of a log with what they are grouped by, and the set in each row, if it is whole. */
export function readSetRows(given: SetColumns) {
  const rows = readRows(
    {
      load: { given: given.load, quantity: quantities.load() },
      reps: { given: given.reps, quantity: quantities.reps() },
      reserve: { given: given.reserve, quantity: quantities.reserve() },
      date: { given: given.date, quantity: quantities.above0("date", "a date") },
    },
    { by: { given: given.by, name: "by" } },
  );
  const { numbers, firstRow } = rows;
  const setIn = (row: number): ReadSet | undefined => {
    const set = {
      load: at(numbers.load, row),
      reps: at(numbers.reps, row),
      reserve: at(numbers.reserve, row),
      date: at(numbers.date, row),
    };
    return isWhole(set) ? { ...set, row: row + firstRow } : undefined;
  };
  return { rows, setIn };
}

/** A number of a column; 0 where the column was not given. */
const at = (column: NumberColumn | undefined, row: number) => (column ? numberAt(column, row) : 0);

/** Whether every value of a row is there. */
function isWhole<K extends string>(row: Record<K, number | null>): row is Record<K, number> {
  return Object.values(row).every((value) => value !== null);
}
