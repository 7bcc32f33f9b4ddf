import { groupsIn } from "../../cells";
import { squadTrend as trendsOf } from "../../core/strength/squadTrend";
import { blankUnlessGiven } from "../blankUnlessGiven";
import type { EquationChoice } from "../choices";
import { groupBy, keyedTable } from "../log/groups";
import { typed, type Given } from "../typed";
import { readSetRows } from "./readSets";
import { readTrendOptions, type TrendSetting } from "./trendOptions";

/** The columns of SQUADTREND after the keys. */
const HEADINGS = {
  days: "days",
  sets: "sets",
  today: "today",
  low: "low",
  high: "high",
  rise: "rise",
  chanceOfRise: "chance of rise",
} as const;

/**
 * Who got stronger: today's one-repetition maximum of every lifter, or lifter and lift, from all their logged sets, with its interval, the rise since their first day and the chance that they have risen. One call for the whole squad. Reps that only fall, tens down to threes, can pass for a rise where reserveSd is too small: take it from RESERVECHECK.
 *
 * @customfunction SQUADTREND
 * @param by One or more columns that tell the logs apart, such as lifter and lift, beside the same rows.
 * @param date {@phrase dayOfSet}
 * @param load {@phrase loadOfSet}
 * @param reps {@phrase repsOfRow}
 * @param [reserve] Reps in reserve, 0 or more; 0 if omitted; a set without one does not count. {@phrase blankSafe E2:E500}
 * @param [reserveBias] {@phrase reserveBias}
 * @param [reserveSd] {@phrase reserveSd}
 * @param [maxReps] {@phrase mostRepsDone}
 * @param [equation] {@phrase equation}
 * @param [confidence] {@phrase confidence}
 * @param [curveSd] {@phrase curveSd}
 * @returns A table with headings, a row a key in order of first appearance: the keys, days, sets, today, low, high, rise (a fraction), chance of rise; "" after days and sets where fewer than 3 days count.
 * @errors #VALUE! naming the row for text with digits ("80kg"), a date where reps or reserve should be, or an error in a cell.
 * @example =SPARE.SQUADTREND({"Ada";"Ada";"Ada";"Bo";"Bo";"Bo"}, {46000;46003;46007;46000;46003;46007}, {100;102.5;105;80;80;80}, 5, {2;2;2;3;2;3})
 * @example =SPARE.SQUADTREND(B1:C500, A1:A500, D1:D500, E1:E500, F1:F500&"")
 * @source The model of STRENGTHTREND for each key; its coverage in simulated logs: docs/accuracy.md.
 */
export function squadTrend(
  by: unknown[][],
  date: unknown[][],
  load: unknown[][],
  reps: unknown[][],
  reserve?: unknown[][],
  reserveBias?: unknown[][],
  reserveSd?: unknown[][],
  maxReps?: unknown[][],
  equation?: EquationChoice[][],
  confidence?: unknown[][],
  curveSd?: unknown[][],
): unknown[][] {
  const how = { reserveBias, reserveSd, maxReps, equation, confidence, curveSd };
  const { headings, keys, trends } = computeSquadTrend({ by, date, load, reps, reserve, ...how });
  const columns = Object.keys(HEADINGS) as (keyof typeof HEADINGS)[];
  const values = trends.map((trend) => columns.map((column) => trend[column] ?? ""));
  return keyedTable({ headings, keys }, Object.values(HEADINGS), values);
}

/** The typed half of SQUADTREND: the keys, and where each of them stands. */
export const computeSquadTrend = typed(
  (cells: Given<"by" | "date" | "load" | "reps", "reserve" | TrendSetting>) => {
    const { rows, setIn } = readSetRows({
      load: blankUnlessGiven(cells.load),
      reps: blankUnlessGiven(cells.reps),
      reserve: cells.reserve,
      date: blankUnlessGiven(cells.date),
      by: blankUnlessGiven(cells.by),
    });
    const options = readTrendOptions(cells);
    const groups = groupBy(rows.labels.by!, rows.numbers.reps!, rows.firstRow);
    const logs = groupsIn(groups).map(({ rows }) => rows.flatMap((row) => setIn(row) ?? []));
    const { headings, keys } = groups;
    return { headings, keys, trends: trendsOf(logs, options) };
  },
);
