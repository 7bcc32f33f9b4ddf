import {
  groupRows,
  groupsIn,
  invalid,
  namesParts,
  notAvailable,
  numberAt,
  report,
  single,
  table,
  type Grid,
  type Labels,
} from "../../cells";
import { reserveCheck as check, type ReserveCheck } from "../../core/reserve/reserveCheck";
import { squadReserveCheck } from "../../core/reserve/squadReserveCheck";
import { readConfidence } from "../settings";
import { typed, type Given } from "../typed";
import { readCalls, type CallCells, type Calls } from "./readCalls";

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
 * @param calledReserve The reserve that was called, 0 or more. {@phrase blankSafe C2:C50}
 * @param repsToFailure All reps of the set, to failure, above 0; at least repAtCall.
 * @param [lifter] Who lifted, where lifters have several sets each: the squad is then judged lifter by lifter.
 * @param [by] One or more columns to count by, such as week, beside the same rows: the result is a table.
 * @param [confidence] {@phrase confidence} The limits of agreement are always 95%.
 * @param [part] One label of the report, or a range of them, for those values alone; not together with by.
 * @returns A report of labels and values; with by, a table: the keys, n, bias, sd, mean miss, low, high. Errors are in reps. From a dozen sets the limits of agreement hold in 92%, not 95%.
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
  const calls = readCalls({ repAtCall, calledReserve, repsToFailure, lifter, by });
  const certainty = readConfidence(confidence);
  if (calls.by !== undefined) {
    if (namesParts(part))
      throw invalid("part is given beside by; expected one of the two, as part is for the report");
    return tableOf(calls, calls.by, certainty);
  }
  const checked = checkAll(calls, certainty);
  return checked === undefined ? single("") : report(ReserveCheckPart, part, checked);
}

/**
 * The typed half of RESERVECHECK, without `by`: the check, with each call that went into it; nothing where the
 * only row is not filled in yet.
 */
export const computeReserveCheck = typed(
  (cells: Omit<CallCells, "by"> & Given<never, "confidence">) =>
    checkAll(readCalls(cells), readConfidence(cells.confidence)),
);

function checkAll(calls: Calls, confidence: number) {
  const complete = calls.errors.flatMap((error, row) => {
    const called = numberAt(calls.called, row);
    return error === null || called === null ? [] : [{ row, call: { called, error } }];
  });
  if (complete.length === 0) {
    if (calls.errors.length === 1) return undefined;
    throw notAvailable("no row has a rep at the call, a called reserve and reps to failure");
  }
  if (calls.lifters === 1) {
    throw notAvailable("lifter names a single lifter; expected none for one lifter's own calls");
  }
  return {
    ...checkRows(
      calls,
      complete.map(({ row }) => row),
      confidence,
    ),
    dropped: calls.dropped,
    calls: complete.map(({ call }) => call),
  };
}

/** Checks the calls in these rows, lifter by lifter where lifters are named. */
function checkRows(
  { errors, lifterOf }: Calls,
  rows: readonly number[],
  confidence: number,
): ReserveCheck {
  const byLifter = new Map<number, number[]>();
  for (const row of rows) {
    const error = numberAt(errors, row);
    if (error === null) continue;
    const lifter = lifterOf?.[row] ?? -1;
    const own = byLifter.get(lifter) ?? [];
    own.push(error);
    byLifter.set(lifter, own);
  }
  if (lifterOf === undefined) return check([...byLifter.values()].flat(), confidence);
  return squadReserveCheck([...byLifter.values()], confidence);
}

/** A row a key, each checked for itself. */
function tableOf(calls: Calls, by: Labels, confidence: number): Grid {
  const groups = groupRows(by, (row) => calls.errors[row] !== null, calls.firstRow, "by");
  return table(
    [...groups.headings, ...TABLE_PARTS.map((part) => ReserveCheckPart[part])],
    groupsIn(groups).map(({ key, rows }) => {
      const values = checkRows(calls, rows, confidence);
      return [...key, ...TABLE_PARTS.map((part) => values[part])];
    }),
  );
}
