import {
  groupRows,
  numberAt,
  readCell,
  readRows,
  type Labels,
  type NumberColumn,
} from "../../cells";
import { inRow } from "../../core/checks";
import { callError } from "../../core/reserve/callError";
import { isBlankLabel } from "../blankLabel";
import { blankUnlessGiven } from "../blankUnlessGiven";
import * as quantities from "../quantities";
import type { Given } from "../typed";

/** Calls of reserve, row by row. */
export interface Calls {
  /** How far off each call was; `null` where a row is not complete. */
  readonly errors: NumberColumn;
  /** The reserve that was called in each row. */
  readonly called: NumberColumn;
  /** How many rows hold something but not everything. */
  readonly dropped: number;
  /** The lifter of each complete row, by number; `undefined` where none are named. */
  readonly lifterOf: Int32Array | undefined;
  readonly lifters: number;
  readonly by: Labels | undefined;
  readonly firstRow: number;
}

/** The columns of calls, as they are given. */
export type CallCells = Given<"repAtCall" | "calledReserve" | "repsToFailure", "lifter" | "by">;

/** Reads sets in which a reserve was called before they went on to failure. */
export function readCalls({ lifter, by, ...given }: CallCells): Calls {
  const at = blankUnlessGiven(given.repAtCall);
  const called = blankUnlessGiven(given.calledReserve);
  const failure = blankUnlessGiven(given.repsToFailure);
  const { count, firstRow, numbers, labels } = readRows(
    {
      at: { given: at, quantity: quantities.reps("repAtCall") },
      called: { given: called, quantity: quantities.reserve("calledReserve") },
      failure: { given: failure, quantity: quantities.reps("repsToFailure") },
    },
    {
      lifter: { given: lifter, name: "lifter", canBeBlank: true },
      by: { given: by, name: "by", canBeBlank: true },
      // Once more as they are, to tell a row with "DNS" in it, which is dropped, from one that is not there.
      rawAt: { given: at, name: "repAtCall" },
      rawCalled: { given: called, name: "calledReserve" },
      rawFailure: { given: failure, name: "repsToFailure" },
    },
  );
  const raw = [labels.rawAt!, labels.rawCalled!, labels.rawFailure!];
  let dropped = 0;
  const errors = Array.from({ length: count }, (_row, row) => {
    const repsAtCall = numberAt(numbers.at, row);
    const reserve = numberAt(numbers.called, row);
    const allReps = numberAt(numbers.failure, row);
    const isNamed = labels.lifter?.cells[row]?.some(namesSomebody) ?? true;
    if (repsAtCall !== null && reserve !== null && allReps !== null && isNamed) {
      return inRow(`row ${row + firstRow}`, () => callError(repsAtCall, reserve, allReps));
    }
    if (raw.some(({ cells }) => namesSomebody(cells[row]?.[0]))) dropped++;
    return null;
  });
  const lifters =
    labels.lifter && groupRows(labels.lifter, (row) => errors[row] !== null, firstRow, "lifter");
  return {
    errors,
    called: numbers.called!,
    dropped,
    lifterOf: lifters?.groupOf,
    lifters: lifters?.keys.length ?? 0,
    by: labels.by,
    firstRow,
  };
}

const namesSomebody = (raw: unknown) => !isBlankLabel(readCell(raw));
