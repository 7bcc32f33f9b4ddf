import { readOne, readRows, setting } from "../../cells";
import { summariseLog, type LogSummary } from "../../core/log/logSummary";
import { blankUnlessGiven } from "../blankUnlessGiven";
import type { EquationChoice } from "../choices";
import { equationOf } from "../equation";
import * as quantities from "../quantities";
import { typed, type Given } from "../typed";
import { groupIn, groupBy, keyedTable } from "./groups";
import { readWithin } from "./readWithin";

/** The most reps to failure that an e1RM is taken from, where the coach gives no other. */
const USUAL_MAX_REPS = 10;

/** The columns of LOGSUMMARY after the keys. */
const SUMMARY_HEADINGS = {
  sets: "sets",
  reps: "reps",
  volumeLoad: "volume load",
  closeSets: "close sets",
  meanReserve: "mean reserve",
  topLoad: "top load",
  bestE1rm: "best e1RM",
  setsWithoutLoad: "sets without load",
  setsAtReserve0OrBlank: "sets at reserve 0 or blank",
} as const satisfies Record<keyof LogSummary, string>;

/**
 * The training log summed up, a row a lifter, lift, week or any combination: sets, reps, volume load, close sets, mean reserve, top load, best e1RM, and how many sets lack a load or a reserve. Write E2:E200&"" for the reserve so that Excel does not read a blank as 0.
 *
 * @customfunction LOGSUMMARY
 * @param by One or more columns to sum up by, such as lifter, lift and week, beside the same rows.
 * @param load The load of each row, above 0; a row without one ("BW", blank) still counts as sets.
 * @param reps {@phrase repsOfRow}
 * @param [reserve] {@phrase reserve} {@phrase blankSafe E2:E200}
 * @param [sets] {@phrase setsOfRow}
 * @param [within] {@phrase within}
 * @param [maxReps] The most reps to failure (reps + reserve) of a set that an e1RM is taken from, above 0; 10 if omitted.
 * @param [equation] {@phrase equation}
 * @returns A table with headings, a row a key in order of first appearance; "" where no set has what a column needs.
 * @errors #VALUE! naming the row for text with digits ("80kg"), a date where reps or reserve should be, or an error in a cell.
 * @example =SPARE.LOGSUMMARY(A1:B200, C1:C200, D1:D200, E1:E200&"", F1:F200)
 * @source Volume load and close sets: common practice; e1RM: equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213.
 */
export function logSummary(
  by: unknown[][],
  load: unknown[][],
  reps: unknown[][],
  reserve?: unknown[][],
  sets?: unknown[][],
  within?: unknown[][],
  maxReps?: unknown[][],
  equation?: EquationChoice[][],
): unknown[][] {
  const measures = Object.keys(SUMMARY_HEADINGS) as (keyof LogSummary)[];
  const cells = { by, load, reps, reserve, sets, within, maxReps, equation };
  const { headings, keys, summaries } = computeLogSummary(cells);
  const values = summaries.map((summary) => measures.map((measure) => summary[measure]));
  return keyedTable({ headings, keys }, Object.values(SUMMARY_HEADINGS), values);
}

type LogCells = Given<
  "by" | "load" | "reps",
  "reserve" | "sets" | "within" | "maxReps" | "equation"
>;

/** The typed half of LOGSUMMARY: the keys in order of first appearance, and what each sums up to. */
export const computeLogSummary = typed((cells: LogCells) => {
  const { numbers, labels, firstRow } = readRows(
    {
      load: { given: blankUnlessGiven(cells.load), quantity: quantities.load() },
      reps: { given: blankUnlessGiven(cells.reps), quantity: quantities.reps() },
      reserve: { given: cells.reserve, quantity: quantities.reserve() },
      sets: { given: cells.sets, quantity: quantities.sets() },
    },
    { by: { given: blankUnlessGiven(cells.by), name: "by" } },
  );
  const log = {
    load: numbers.load!,
    reps: numbers.reps!,
    reserve: numbers.reserve,
    sets: numbers.sets,
  };
  const groups = groupBy(labels.by!, log.reps, firstRow);
  const summaries = summariseLog(log, groupIn(groups), groups.keys.length, {
    within: readWithin(cells.within),
    maxReps: readOne(setting(cells.maxReps, quantities.reps("maxReps"), USUAL_MAX_REPS))!,
    equation: readOne(equationOf(cells.equation))!,
  });
  return { headings: groups.headings, keys: groups.keys, summaries };
});
