import {
  CellError,
  groupRows,
  HostError,
  invalid,
  isSingle,
  placeIn,
  quoted,
  readCell,
  readOne,
  readQuantity,
  readRows,
  required,
  setting,
  single,
  table,
  toRange,
  type Grid,
  type Groups,
  type Labels,
  type NumberColumn,
  type Part,
} from "../cells";
import { closeSets as countCloseSets } from "../core/log/closeSets";
import { summariseLog, type LogSummary } from "../core/log/logSummary";
import { muscleSets as countMuscleSets } from "../core/log/muscleSets";
import { sessionLoad as loadOfSession } from "../core/log/sessionLoad";
import { volumeLoads } from "../core/log/volumeLoad";
import * as week from "../core/log/weekLoad";
import { lift } from "./answer";
import { isBlankLabel } from "./blankLabel";
import type { EquationChoice } from "./choices";
import { equationOf } from "./equation";
import * as quantities from "./quantities";
import { readShares, type Shares } from "./shares";

/** Reps from failure at which a set still counts as close, where the coach gives no other; common practice. */
const USUAL_WITHIN = 4;

/** The most reps to failure that an e1RM is taken from, where the coach gives no other. */
const USUAL_MAX_REPS = 10;

/**
 * Volume load: sets × reps × load, added up; by lifter, lift or week where you name the columns to count by.
 *
 * @customfunction VOLUMELOAD
 * @param load The load of each row, above 0; a row without one ("BW", blank) adds nothing.
 * @param reps The reps of each row, above 0; a row without reps is not there.
 * @param [sets] How many sets the row stands for; 1 if omitted or blank.
 * @param [by] One or more columns to count by, such as lifter and week, beside the same rows.
 * @returns One number; with by, a table with headings: the keys in order of first appearance, then volume load.
 * @errors #VALUE! naming the row for text with digits ("80kg"), a date where reps should be, or an error in a cell.
 * @example =SPARE.VOLUMELOAD(C2:C200, D2:D200)
 * @example =SPARE.VOLUMELOAD(C1:C200, D1:D200, F1:F200, A1:B200)
 * @source Common practice, no source.
 */
export function volumeLoad(
  load: unknown[][],
  reps: unknown[][],
  sets?: unknown[][],
  by?: unknown[][],
): unknown[][] {
  const rows = readRows(
    {
      load: { given: blankUnlessGiven(load), quantity: quantities.load() },
      reps: { given: blankUnlessGiven(reps), quantity: quantities.reps() },
      sets: { given: sets, quantity: quantities.sets() },
    },
    { by: { given: by, name: "by", canBeBlank: true } },
  );
  const log = { load: rows.numbers.load!, reps: rows.numbers.reps!, sets: rows.numbers.sets };
  if (rows.labels.by === undefined) {
    const notFilledIn = rows.count === 1 && (log.reps[0] === null || log.load[0] === null);
    return single(notFilledIn ? "" : volumeLoads(log, allInOne, 1)[0]);
  }
  const groups = groupBy(rows.labels.by, log.reps, rows.firstRow);
  const totals = volumeLoads(log, groupIn(groups), groups.keys.length);
  return keyedTable(groups, ["volume load"], (group) => [totals[group]]);
}

/**
 * Sets taken close to failure: with at most so many reps left, 4 unless you say otherwise. A set with no reserve written down is not counted; write E2:E200&"" so that Excel does not read its blank as 0.
 *
 * @customfunction CLOSESETS
 * @param reps The reps of each row, above 0; a row without reps is not there.
 * @param reserve Reps in reserve, 0 or more; blank means not recorded. Write E2:E200&"" so that a blank is not read as 0.
 * @param [sets] How many sets the row stands for; 1 if omitted or blank.
 * @param [within] The most reps in reserve that count as close, 0 or more; 4 if omitted.
 * @param [by] One or more columns to count by, such as lifter and week, beside the same rows.
 * @returns A number of sets; with by, a table with headings: the keys in order of first appearance, then close sets.
 * @errors #VALUE! naming the row for text with digits, a date where reps or reserve should be, or an error in a cell.
 * @example =SPARE.CLOSESETS(D2:D200, E2:E200&"", F2:F200)
 * @example =SPARE.CLOSESETS(D1:D200, E1:E200&"", F1:F200, 3, A1:B200)
 * @source Common practice, no source.
 */
export function closeSets(
  reps: unknown[][],
  reserve: unknown[][],
  sets?: unknown[][],
  within?: unknown[][],
  by?: unknown[][],
): unknown[][] {
  const rows = readRows(
    {
      reps: { given: blankUnlessGiven(reps), quantity: quantities.reps() },
      reserve: { given: blankUnlessGiven(reserve), quantity: quantities.reserve() },
      sets: { given: sets, quantity: quantities.sets() },
    },
    { by: { given: by, name: "by", canBeBlank: true } },
  );
  const log = { reps: rows.numbers.reps!, reserve: rows.numbers.reserve, sets: rows.numbers.sets };
  const limit = readWithin(within);
  if (rows.labels.by === undefined) {
    const notFilledIn = rows.count === 1 && (log.reps[0] === null || log.reserve![0] === null);
    return single(notFilledIn ? "" : countCloseSets(log, limit, allInOne, 1)[0]);
  }
  const groups = groupBy(rows.labels.by, log.reps, rows.firstRow);
  const totals = countCloseSets(log, limit, groupIn(groups), groups.keys.length);
  return keyedTable(groups, ["close sets"], (group) => [totals[group]]);
}

/**
 * Close sets per muscle: each set taken close to failure counts for a muscle by the exercise's share in it, 1 for the muscle that does the work, 0.5 for one that helps. A set with no reserve written down is not counted.
 *
 * @customfunction MUSCLESETS
 * @param exercise The exercise of each row, as the shares table spells it; case does not matter.
 * @param reps The reps of each row, above 0; a row without reps is not there.
 * @param shares A table with headings: exercise, then a column a muscle; in it 1, 0.5 or 0. Blank is 0.
 * @param [reserve] Reps in reserve, 0 or more; 0 if omitted, not recorded if blank. Write E2:E200&"" so that a blank is not read as 0.
 * @param [sets] How many sets the row stands for; 1 if omitted or blank.
 * @param [within] The most reps in reserve that count as close, 0 or more; 4 if omitted.
 * @param [by] One or more columns to count by, such as lifter and week, beside the same rows.
 * @returns A table with headings: a row a muscle; with by, a row a key and a column a muscle.
 * @errors #VALUE! naming the row and the exercise when shares does not list it, and the row of a bad cell.
 * @example =SPARE.MUSCLESETS(B2:B200, D2:D200, Shares!A1:F12, E2:E200&"")
 * @example =SPARE.MUSCLESETS(B1:B200, D1:D200, Shares!A1:F12, E1:E200&"", F1:F200, 4, A1:A200)
 * @source Fractional counting of sets: Pelland et al. 2024.
 */
export function muscleSets(
  exercise: unknown[][],
  reps: unknown[][],
  shares: unknown[][],
  reserve?: unknown[][],
  sets?: unknown[][],
  within?: unknown[][],
  by?: unknown[][],
): unknown[][] {
  const rows = readRows(
    {
      reps: { given: blankUnlessGiven(reps), quantity: quantities.reps() },
      reserve: { given: reserve, quantity: quantities.reserve() },
      sets: { given: sets, quantity: quantities.sets() },
    },
    {
      exercise: { given: blankUnlessGiven(exercise), name: "exercise" },
      by: { given: by, name: "by", canBeBlank: true },
    },
  );
  const { muscles, rows: shareRows, placeOf } = readShares(shares);
  const log = { reps: rows.numbers.reps!, reserve: rows.numbers.reserve, sets: rows.numbers.sets };
  const exerciseOf = findExercises(rows.labels.exercise!, log.reps, placeOf, rows.firstRow);
  const limit = readWithin(within);
  if (rows.labels.by === undefined) {
    const [totals] = countMuscleSets({ ...log, exerciseOf }, shareRows, limit, allInOne, 1);
    return table(
      ["muscle", "close sets"],
      muscles.map((muscle, index) => [muscle, totals[index]]),
    );
  }
  const groups = groupBy(rows.labels.by, log.reps, rows.firstRow);
  const totals = countMuscleSets(
    { ...log, exerciseOf },
    shareRows,
    limit,
    groupIn(groups),
    groups.keys.length,
  );
  return keyedTable(groups, muscles, (group) => totals[group]);
}

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
 * @param reps The reps of each row, above 0; a row without reps is not there.
 * @param [reserve] Reps in reserve, 0 or more; 0 if omitted, not recorded if blank. Write E2:E200&"" so that a blank is not read as 0.
 * @param [sets] How many sets the row stands for; 1 if omitted or blank.
 * @param [within] The most reps in reserve that count as close, 0 or more; 4 if omitted.
 * @param [maxReps] The most reps to failure (reps + reserve) of a set that an e1RM is taken from, above 0; 10 if omitted.
 * @param [equation] A published equation, "epley" if omitted, or the athlete's own curve constant.
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
  const { numbers, labels, firstRow } = readRows(
    {
      load: { given: blankUnlessGiven(load), quantity: quantities.load() },
      reps: { given: blankUnlessGiven(reps), quantity: quantities.reps() },
      reserve: { given: reserve, quantity: quantities.reserve() },
      sets: { given: sets, quantity: quantities.sets() },
    },
    { by: { given: blankUnlessGiven(by), name: "by" } },
  );
  const log = {
    load: numbers.load!,
    reps: numbers.reps!,
    reserve: numbers.reserve,
    sets: numbers.sets,
  };
  const groups = groupBy(labels.by!, log.reps, firstRow);
  const summaries = summariseLog(log, groupIn(groups), groups.keys.length, {
    within: readWithin(within),
    maxReps: readOne(setting(maxReps, quantities.reps("maxReps"), USUAL_MAX_REPS))!,
    equation: readOne(equationOf(equation))!,
  });
  const measures = Object.keys(SUMMARY_HEADINGS) as (keyof LogSummary)[];
  return keyedTable(groups, Object.values(SUMMARY_HEADINGS), (group) =>
    measures.map((measure) => summaries[group][measure]),
  );
}

/**
 * Session load, also called session RPE: how hard the whole session felt, times its minutes.
 *
 * @customfunction SESSIONLOAD
 * @param rpe How hard the whole session felt, above 0 and up to 10.
 * @param minutes How long the session took, in minutes, above 0.
 * @returns The session load, in arbitrary units; the shape of the ranges given, "" where a row is not filled in.
 * @errors #VALUE! for an RPE above 10.
 * @example =SPARE.SESSIONLOAD(7, 60)
 * @example =SPARE.SESSIONLOAD(B2:B40, C2:C40)
 * @source Foster et al. 2001, J Strength Cond Res 15:109-115.
 */
export function sessionLoad(rpe: unknown[][], minutes: unknown[][]): unknown[][] {
  const scale = {
    ...quantities.above0("rpe", "an RPE above 0, up to 10"),
    accepts: (value: number) => value > 0 && value <= 10,
  };
  return lift(
    {
      rpe: required(rpe, scale),
      minutes: required(minutes, quantities.above0("minutes", "minutes above 0")),
    },
    ({ rpe, minutes }) => loadOfSession(rpe, minutes),
  );
}

/**
 * Monotony of a week: the mean of its daily loads over their standard deviation. High when every day is the same.
 *
 * @customfunction WEEKMONOTONY
 * @param loads The load of each day, 0 or more. Every cell is a day; blank, 0 and text such as "rest" are rest days, so select the week and not the whole column.
 * @returns One number, 0 or more, without a unit.
 * @errors #N/A for fewer than 2 days, or when every day has the same load.
 * @example =SPARE.WEEKMONOTONY(B2:B8)
 * @source Foster 1998, Med Sci Sports Exerc 30:1164-1168; the standard deviation over n − 1.
 */
export function weekMonotony(loads: unknown[][]): unknown[][] {
  return ofWeek(loads, week.weekMonotony);
}

/**
 * Strain of a week: its total load times its monotony. High when much is done with little change from day to day.
 *
 * @customfunction WEEKSTRAIN
 * @param loads The load of each day, 0 or more. Every cell is a day; blank, 0 and text such as "rest" are rest days, so select the week and not the whole column.
 * @returns One number, in the unit of the loads.
 * @errors #N/A for fewer than 2 days, or when every day has the same load.
 * @example =SPARE.WEEKSTRAIN(B2:B8)
 * @source Foster 1998, Med Sci Sports Exerc 30:1164-1168; the standard deviation over n − 1.
 */
export function weekStrain(loads: unknown[][]): unknown[][] {
  return ofWeek(loads, week.weekStrain);
}

function ofWeek(loads: unknown, compute: (days: readonly number[]) => number): Grid {
  const days = readDays(loads);
  const notFilledIn = days.length === 1 && days[0] === 0;
  return single(notFilledIn ? "" : compute(days));
}

/** A load a day, from every cell of a range: what is no number is a day of rest. */
function readDays(loads: unknown): number[] {
  const range = toRange(loads);
  const quantity = quantities.atLeast0("loads", "a day's load, 0 or more");
  return range.cells.flatMap((row, rowAt) =>
    row.map((raw, columnAt) => {
      const value = readCell(raw);
      const place = placeIn(range, rowAt, columnAt);
      if (value instanceof HostError && !isSingle(range)) {
        throw invalid(`${place} holds ${value.code} in loads`);
      }
      const day = readQuantity(value, quantity);
      if (day instanceof CellError) throw day.at(place);
      return day ?? 0;
    }),
  );
}

/** A required column that a call leaves out is a blank one. */
const blankUnlessGiven = (argument: unknown) => argument ?? "";

const readWithin = (within: unknown) =>
  readOne(setting(within, quantities.reserve("within"), USUAL_WITHIN))!;

/** The grouping of a log that is counted as a whole. */
const allInOne = () => 0;

const groupIn =
  ({ groupOf }: Groups) =>
  (row: number) =>
    groupOf[row];

/** The rows that are there, gathered under their keys: a row is judged by its reps. */
const groupBy = (by: Labels, reps: NumberColumn, firstRow: number) =>
  groupRows(by, (row) => reps[row] !== null, firstRow, "by");

/** A table that leads each row with its keys, under the headings they have in the log. */
const keyedTable = (
  { headings, keys }: Groups,
  measures: readonly string[],
  values: (group: number) => readonly Part[],
): Grid =>
  table(
    [...headings, ...measures],
    keys.map((key, group) => [...key, ...values(group)]),
  );

/** Finds each row's exercise among the shares. One that is missing there is an error: its sets would be lost. */
function findExercises(
  exercises: Labels,
  reps: NumberColumn,
  placeOf: Shares["placeOf"],
  firstRow: number,
): (row: number) => number {
  if (exercises.headings.length > 1) {
    throw invalid(`exercise has ${exercises.headings.length} columns; expected one column`);
  }
  const { keys, groupOf } = groupRows(exercises, (row) => reps[row] !== null, firstRow, "exercise");
  const places = keys.map(([exercise], group) => {
    const place = placeOf(exercise);
    if (place !== undefined) return place;
    const found = isBlankLabel(readCell(exercise))
      ? "exercise is blank; expected one that shares lists"
      : `shares does not list the exercise ${quoted(String(exercise))}`;
    throw invalid(`row ${groupOf.indexOf(group) + firstRow}: ${found}`);
  });
  return (row) => places[groupOf[row]];
}
