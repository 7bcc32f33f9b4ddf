import { readRows, type NumberColumn } from "../../cells";
import * as quantities from "../quantities";

/** The columns of a log of sets, as they were given. */
interface SetColumns {
  readonly load: unknown;
  readonly reps: unknown;
  readonly reserve?: unknown;
  readonly date?: unknown;
}

/** The sets of a log that are whole: a row with anything missing is no set to learn from. */
export function readSets(given: SetColumns) {
  const { count, firstRow, numbers } = readRows({
    load: { given: given.load, quantity: quantities.load() },
    reps: { given: given.reps, quantity: quantities.reps() },
    reserve: { given: given.reserve, quantity: quantities.reserve() },
    date: { given: given.date, quantity: quantities.above0("date", "a date") },
  });
  const at = (column: NumberColumn | undefined, row: number) => (column ? column[row] : 0);
  const sets = [];
  for (let row = 0; row < count; row++) {
    const set = {
      load: at(numbers.load, row),
      reps: at(numbers.reps, row),
      reserve: at(numbers.reserve, row),
      date: at(numbers.date, row),
    };
    if (isWhole(set)) sets.push({ ...set, row: row + firstRow });
  }
  return sets;
}

/** Whether every value of a row is there. */
function isWhole<K extends string>(row: Record<K, number | null>): row is Record<K, number> {
  return Object.values(row).every((value) => value !== null);
}
