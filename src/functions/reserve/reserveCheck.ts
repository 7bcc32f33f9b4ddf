import {
  groupRows,
  invalid,
  namesParts,
  notAvailable,
  readCell,
  readRows,
  report,
  single,
  table,
  type Grid,
  type Labels,
} from "../../cells";
import { inRow } from "../../core/checks";
import { callError } from "../../core/reserve/callError";
import { reserveCheck as check, type ReserveCheck } from "../../core/reserve/reserveCheck";
import { squadReserveCheck } from "../../core/reserve/squadReserveCheck";
import { isBlankLabel } from "../blankLabel";
import * as quantities from "../quantities";
import { readConfidence } from "../settings";

/**
 * @customenum {string}
 */
export enum ReserveCheckPart {
  /** Sets checked, one call each. */
  n = "n",
  /** Rows left out because something is missing in them. */
  dropped = "dropped",
  /** The mean error, in reps; above 0 they had more left than they said. */
  bias = "bias",
  /** The standard deviation of the error of one call. */
  sd = "sd",
  /** How far off a call is on average, whichever way. */
  meanMiss = "mean miss",
  /** The low end of the bias's interval. */
  low = "low",
  /** The high end of the bias's interval. */
  high = "high",
  /** The low limit of agreement: 95% of single calls are off by this to agree high. */
  agreeLow = "agree low",
  /** The high limit of agreement: 95% of single calls are off by agree low to this. */
  agreeHigh = "agree high",
  /** How likely such a bias is by chance alone, two-sided. */
  p = "p",
}

/** The columns of the table that counts by a key. */
const TABLE_PARTS = ["n", "bias", "sd", "meanMiss", "low", "high"] as const satisfies readonly (
  keyof ReserveCheck | keyof typeof ReserveCheckPart
)[];

/**
 * How well a lifter or a squad calls reps in reserve: call a reserve in the middle of a set, go on to failure, and compare. Above zero they had more left than they said.
 *
 * @customfunction RESERVECHECK
 * @param repAtCall The reps done when the reserve was called, above 0.
 * @param calledReserve The reserve that was called, 0 or more. Write C2:C50&"" so that a blank is not read as 0.
 * @param repsToFailure All reps of the set, to failure, above 0; at least repAtCall.
 * @param [lifter] Who lifted, where lifters have several sets each: the squad is then judged lifter by lifter.
 * @param [by] One or more columns to count by, such as week, beside the same rows: the result is a table.
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted. The limits of agreement are always 95%.
 * @param [part] One label of the report, or a range of them, for those values alone; not together with by.
 * @returns A report of labels and values; with by, a table: the keys, n, bias, sd, mean miss, low, high. Errors are in reps.
 * @errors #VALUE! naming the row where fewer reps were done to failure than at the call. #N/A without a complete row, or with a single lifter in the lifter column.
 * @example =SPARE.RESERVECHECK(B2:B50, C2:C50&"", D2:D50)
 * @example =SPARE.RESERVECHECK(B1:B50, C1:C50&"", D1:D50, A1:A50, E1:E50)
 * @example =SPARE.RESERVECHECK(B2:B50, C2:C50&"", D2:D50, , , , "bias")
 * @source Bland and Altman 1986, Lancet i:307-310; with lifter, Bland and Altman 2007, J Biopharm Stat 17:571-582.
 */
export function reserveCheck(
  repAtCall: unknown[][],
  calledReserve: unknown[][],
  repsToFailure: unknown[][],
  lifter?: unknown[][],
  by?: unknown[][],
  confidence?: unknown[][],
  part?: ReserveCheckPart[][],
): unknown[][] {
  const calls = readCalls(repAtCall, calledReserve, repsToFailure, lifter, by);
  const certainty = readConfidence(confidence);
  if (calls.by !== undefined) {
    if (namesParts(part)) throw invalid("part is for the report; leave it out where by is given");
    return tableOf(calls, calls.by, certainty);
  }
  const complete = calls.errors.flatMap((error, row) => (error === null ? [] : [row]));
  if (complete.length === 0) {
    if (calls.errors.length === 1) return single("");
    throw notAvailable("no row has a rep at the call, a called reserve and reps to failure");
  }
  if (calls.lifters === 1) {
    throw notAvailable(
      "lifter names a single lifter; leave it out to check one lifter's own calls",
    );
  }
  return report(ReserveCheckPart, part, {
    ...checkRows(calls, complete, certainty),
    dropped: calls.dropped,
  });
}

/** Calls of reserve, row by row. */
interface Calls {
  /** How far off each call was; `null` where a row is not complete. */
  readonly errors: readonly (number | null)[];
  /** How many rows hold something but not everything. */
  readonly dropped: number;
  /** The lifter of each complete row, by number; `undefined` where none are named. */
  readonly lifterOf: Int32Array | undefined;
  readonly lifters: number;
  readonly by: Labels | undefined;
  readonly firstRow: number;
}

function readCalls(
  repAtCall: unknown,
  calledReserve: unknown,
  repsToFailure: unknown,
  lifter: unknown,
  by: unknown,
): Calls {
  const [at, called, failure] = [repAtCall, calledReserve, repsToFailure].map((one) => one ?? "");
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
    const repsAtCall = numbers.at![row];
    const reserve = numbers.called![row];
    const allReps = numbers.failure![row];
    const isNamed = labels.lifter?.cells[row].some(namesSomebody) ?? true;
    if (repsAtCall !== null && reserve !== null && allReps !== null && isNamed) {
      return inRow(`row ${row + firstRow}`, () => callError(repsAtCall, reserve, allReps));
    }
    if (raw.some(({ cells }) => namesSomebody(cells[row][0]))) dropped++;
    return null;
  });
  const lifters =
    labels.lifter && groupRows(labels.lifter, (row) => errors[row] !== null, firstRow, "lifter");
  return {
    errors,
    dropped,
    lifterOf: lifters?.groupOf,
    lifters: lifters?.keys.length ?? 0,
    by: labels.by,
    firstRow,
  };
}

const namesSomebody = (raw: unknown) => !isBlankLabel(readCell(raw));

/** Checks the calls in these rows, lifter by lifter where lifters are named. */
function checkRows(
  { errors, lifterOf }: Calls,
  rows: readonly number[],
  confidence: number,
): ReserveCheck {
  if (lifterOf === undefined) {
    return check(
      rows.map((row) => errors[row]!),
      confidence,
    );
  }
  const byLifter = new Map<number, number[]>();
  for (const row of rows) {
    const own = byLifter.get(lifterOf[row]) ?? [];
    own.push(errors[row]!);
    byLifter.set(lifterOf[row], own);
  }
  return squadReserveCheck([...byLifter.values()], confidence);
}

/** A row a key, each checked for itself. */
function tableOf(calls: Calls, by: Labels, confidence: number): Grid {
  const { headings, keys, groupOf } = groupRows(
    by,
    (row) => calls.errors[row] !== null,
    calls.firstRow,
    "by",
  );
  const rowsOf = keys.map((): number[] => []);
  groupOf.forEach((group, row) => {
    if (group >= 0) rowsOf[group].push(row);
  });
  return table(
    [...headings, ...TABLE_PARTS.map((part) => ReserveCheckPart[part])],
    keys.map((key, group) => {
      const values = checkRows(calls, rowsOf[group], confidence);
      return [...key, ...TABLE_PARTS.map((part) => values[part])];
    }),
  );
}
