import {
  partsOr,
  readOne,
  readRows,
  recorded,
  report,
  required,
  setting,
  table,
  type NumberColumn,
} from "../cells";
import { fitCurve as fit } from "../core/strength/fitCurve";
import { e1rm as estimate, e1rmBand as band } from "../core/strength/oneRepMax";
import { fractionAt } from "../core/strength/equations";
import { relativeStrength as relative } from "../core/strength/relativeStrength";
import { repsAtLoad } from "../core/strength/repsAtLoad";
import { strengthTrend as trend } from "../core/strength/strengthTrend";
import { lift, liftRow } from "./answer";
import type { EquationChoice } from "./choices";
import { equationOf } from "./equation";
import * as quantities from "./quantities";
import { readConfidence } from "./settings";

/**
 * Estimated one-repetition maximum (e1RM) from an ordinary set: its load, its reps and the reps left in reserve. An estimate is not a clearance to lift.
 *
 * @customfunction E1RM
 * @param load The load of the set, above 0, in kilograms or pounds.
 * @param reps The reps done, above 0.
 * @param [reserve] Reps in reserve, 0 or more; 0 if omitted. A blank cell means not recorded: write D2:D50&"" so that a blank is not read as 0.
 * @param [equation] A published equation, "epley" if omitted, or the athlete's own curve constant.
 * @returns The e1RM in the unit of the load; the shape of the ranges given, "" where a row is not filled in.
 * @errors #VALUE! when reps plus reserve is below 1 or past the equation's reach (15 for brzycki and lander, 30 for the others).
 * @example =SPARE.E1RM(100, 5, 2)
 * @example =SPARE.E1RM(B2:B20, C2:C20, D2:D20&"")
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213.
 */
export function e1rm(
  load: unknown[][],
  reps: unknown[][],
  reserve?: unknown[][],
  equation?: EquationChoice[][],
): unknown[][] {
  return lift(
    { ...setInputs(load, reps, reserve), equation: equationOf(equation) },
    ({ load, reps, reserve, equation }) => estimate(load, reps + reserve, equation),
  );
}

/**
 * @customenum {string}
 */
export enum E1rmBandPart {
  /** The e1RM if fewer reps were left than called. */
  low = "low",
  /** The e1RM as called. */
  estimate = "estimate",
  /** The e1RM if more reps were left than called. */
  high = "high",
}

/**
 * The e1RM with the range it could have if the call of the reserve is wrong by a rep or so: low, estimate, high.
 *
 * @customfunction E1RMBAND
 * @param load The load of the set, above 0, in kilograms or pounds.
 * @param reps The reps done, above 0.
 * @param [reserve] Reps in reserve as called, 0 or more; 0 if omitted, not recorded if blank.
 * @param [reserveError] How many reps the call may be wrong by, either way; 1 if omitted, 0 for none.
 * @param [equation] A published equation, "epley" if omitted, or the athlete's own curve constant.
 * @param [part] "low", "estimate" or "high" for that one value in one cell.
 * @returns A row: low, estimate, high, in the unit of the load. Never fewer reps than were done.
 * @errors #VALUE! when reps plus reserve plus reserveError is past the equation's reach.
 * @example =SPARE.E1RMBAND(100, 5, 2)
 * @example =SPARE.E1RMBAND(100, 6, 1, 3, , "high")
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213; the band by arithmetic.
 */
export function e1rmBand(
  load: unknown[][],
  reps: unknown[][],
  reserve?: unknown[][],
  reserveError?: unknown[][],
  equation?: EquationChoice[][],
  part?: E1rmBandPart[][],
): unknown[][] {
  return liftRow(
    {
      ...setInputs(load, reps, reserve),
      reserveError: setting(
        reserveError,
        quantities.atLeast0("reserveError", "a number of reps, 0 or more"),
        1,
      ),
      equation: equationOf(equation),
    },
    E1rmBandPart,
    part,
    ({ load, reps, reserve, reserveError, equation }) =>
      band(load, reps, reserve, reserveError, equation),
  );
}

/**
 * The fraction of the one-repetition maximum that fits a set: 0.85 means 85%. Format the cell as a percentage.
 *
 * @customfunction PERCENT1RM
 * @param reps The reps of the set, above 0.
 * @param [reserve] Reps in reserve, 0 or more; 0 if omitted, not recorded if blank.
 * @param [equation] A published equation, "epley" if omitted, or the athlete's own curve constant.
 * @returns A fraction of 1RM between 0 and 1; 1 at one rep to failure.
 * @errors #VALUE! when reps plus reserve is below 1 or past the equation's reach.
 * @example =SPARE.PERCENT1RM(5, 2)
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213.
 */
export function percent1rm(
  reps: unknown[][],
  reserve?: unknown[][],
  equation?: EquationChoice[][],
): unknown[][] {
  return lift(
    {
      reps: required(reps, quantities.reps()),
      reserve: recorded(reserve, quantities.reserve(), 0),
      equation: equationOf(equation),
    },
    ({ reps, reserve, equation }) => fractionAt(equation, reps + reserve),
  );
}

/**
 * How many reps a load allows, from the one-repetition maximum, leaving the reserve you want. Not rounded.
 *
 * @customfunction REPSAT
 * @param load The load on the bar, above 0.
 * @param oneRepMax The 1RM in the same unit, above 0.
 * @param [reserve] Reps to leave in reserve, 0 or more; 0 if omitted.
 * @param [equation] A published equation, "epley" if omitted, or the athlete's own curve constant.
 * @returns Reps, 0 or more; 0 for a load above the 1RM.
 * @errors #N/A for a load lighter than the equation reaches.
 * @example =SPARE.REPSAT(80, 100, 3)
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213, solved for the reps.
 */
export function repsAt(
  load: unknown[][],
  oneRepMax: unknown[][],
  reserve?: unknown[][],
  equation?: EquationChoice[][],
): unknown[][] {
  return lift(
    {
      load: required(load, quantities.load()),
      oneRepMax: required(oneRepMax, quantities.load("oneRepMax")),
      reserve: recorded(reserve, quantities.reserve(), 0),
      equation: equationOf(equation),
    },
    ({ load, oneRepMax, reserve, equation }) => repsAtLoad(load, oneRepMax, reserve, equation),
  );
}

/**
 * @customenum {string}
 */
export enum FitCurvePart {
  /** How many sets the curve was fitted to. */
  sets = "sets",
  /** The athlete's 1RM from the curve. */
  oneRepMax = "one-rep max",
  /** Lower end of the interval of the 1RM. */
  oneRepMaxLow = "one-rep max low",
  /** Upper end of the interval of the 1RM. */
  oneRepMaxHigh = "one-rep max high",
  /** The athlete's curve constant, for any equation argument. */
  constant = "constant",
  /** Lower end of the interval of the constant. */
  constantLow = "constant low",
  /** Upper end of the interval of the constant. */
  constantHigh = "constant high",
  /** Reps to failure at 80% of the 1RM. */
  repsAt80 = "reps at 80%",
  /** Spread of the loads about the curve. */
  residualSd = "residual sd",
  /** Share of the loads' variance that the curve explains. */
  rSquared = "r squared",
}

/**
 * The athlete's own load-repetition curve from their own sets: their 1RM, and a constant that goes into any equation argument in place of a published name.
 *
 * @customfunction FITCURVE
 * @param load The loads of the sets, above 0, in one unit.
 * @param reps The reps done, above 0.
 * @param [reserve] Reps in reserve, 0 or more; 0 if omitted; a set without one is left out. Write D2:D50&"" so that a blank is not read as 0.
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
 * @param [part] One label, such as "constant", or a range of labels, for those values alone.
 * @returns A report of two columns: sets, one-rep max (low, high), constant (low, high), reps at 80%, residual sd, r squared.
 * @errors #N/A under 3 sets, under 2 different totals of reps plus reserve, or where the loads do not fall as the reps rise; #VALUE! for more than 30 reps to failure.
 * @example =SPARE.FITCURVE({120;110;100;92.5;80}, {1;3;5;8;12})
 * @example =SPARE.E1RM(B2, C2, D2, SPARE.FITCURVE(B2:B20, C2:C20, D2:D20&"", , "constant"))
 * @source Least squares on load = 1RM / (1 + (t − 1) / c): Epley's curve (1985) with the constant left free; intervals from the standard errors and Student's t.
 */
export function fitCurve(
  load: unknown[][],
  reps: unknown[][],
  reserve?: unknown[][],
  confidence?: unknown[][],
  part?: FitCurvePart[][],
): unknown[][] {
  const sets = readSets({ load, reps, reserve });
  const level = readConfidence(confidence);
  return report(FitCurvePart, part, fit(sets, level));
}

/**
 * Strength relative to body mass: load / body mass, or load / body mass to an exponent of your choice.
 *
 * @customfunction RELATIVESTRENGTH
 * @param load The load or 1RM, above 0.
 * @param bodyMass Body mass in the same unit, above 0.
 * @param [exponent] 1 if omitted; 2/3 for the allometric scale, which lets light and heavy athletes be compared.
 * @returns Load per unit of body mass.
 * @errors #VALUE! for an exponent that is not above 0.
 * @example =SPARE.RELATIVESTRENGTH(180, 90)
 * @example =SPARE.RELATIVESTRENGTH(180, 90, 2/3)
 * @source Exponent 2/3 for strength: Jaric 2002, Sports Med 32:615-631.
 */
export function relativeStrength(
  load: unknown[][],
  bodyMass: unknown[][],
  exponent?: unknown[][],
): unknown[][] {
  return lift(
    {
      load: required(load, quantities.load()),
      bodyMass: required(bodyMass, quantities.above0("bodyMass", "a body mass above 0")),
      exponent: setting(exponent, quantities.above0("exponent", "an exponent above 0"), 1),
    },
    ({ load, bodyMass, exponent }) => relative(load, bodyMass, exponent),
  );
}

/**
 * @customenum {string}
 */
export enum StrengthTrendPart {
  /** The 1RM on the last day logged. */
  today = "today",
  /** Lower end of its interval. */
  low = "low",
  /** Upper end of its interval. */
  high = "high",
  /** Fraction gained since the first day. */
  rise = "rise",
  /** The chance that the 1RM has risen since the first day. */
  chanceOfRise = "chance of rise",
  /** Days with a set that counts. */
  days = "days",
  /** Sets that count. */
  sets = "sets",
}

/**
 * Today's one-repetition maximum from every logged set of one lifter and lift, with an honest interval: it weighs each set by how far from failure it was and by how well the lifter judges that.
 *
 * @customfunction STRENGTHTREND
 * @param date The day of each set.
 * @param load The load of each set, above 0, in one unit.
 * @param reps The reps done, above 0.
 * @param [reserve] Reps in reserve, 0 or more; 0 if omitted; a set without one is left out. Write D2:D50&"" so that a blank is not read as 0.
 * @param [reserveBias] How many reps more the lifter has left than they say, on average (the bias of RESERVECHECK); 0 if omitted.
 * @param [reserveSd] Spread of those calls in reps (the sd of RESERVECHECK), above 0; 1 if omitted.
 * @param [maxReps] Sets of more reps to failure than this are left out; 12 if omitted.
 * @param [equation] A published equation, "epley" if omitted, or the athlete's own curve constant.
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
 * @param [part] One label, such as "today", or a range of labels, for those values alone.
 * @returns A table with headings: date, one-rep max, low, high, a day a row. As parts: today, low, high, rise (a fraction), chance of rise, days, sets.
 * @errors #N/A under 3 days with sets that count; #VALUE! naming the row for a bad cell, or for reps past the equation's reach.
 * @example =SPARE.STRENGTHTREND({46000;46003;46007;46010;46014}, {100;102.5;100;105;107.5}, {5;5;6;5;4}, {2;1;2;1;2}, , , , , , "today")
 * @example =SPARE.STRENGTHTREND(A2:A200, B2:B200, C2:C200, D2:D200&"")
 * @source Local-level model, Kalman filter and smoother: Harvey 1989; Rauch, Tung and Striebel 1965; Durbin and Koopman 2012.
 */
export function strengthTrend(
  date: unknown[][],
  load: unknown[][],
  reps: unknown[][],
  reserve?: unknown[][],
  reserveBias?: unknown[][],
  reserveSd?: unknown[][],
  maxReps?: unknown[][],
  equation?: EquationChoice[][],
  confidence?: unknown[][],
  part?: StrengthTrendPart[][],
): unknown[][] {
  const sets = readSets({ load, reps, reserve, date });
  const result = trend(sets, {
    equation: readOne(equationOf(equation))!,
    reserveBias: readOne(setting(reserveBias, quantities.anyNumber("reserveBias"), 0))!,
    reserveSd: readOne(setting(reserveSd, quantities.above0("reserveSd"), 1))!,
    maxReps: readOne(setting(maxReps, quantities.reps("maxReps"), 12))!,
    confidence: readConfidence(confidence),
  });
  return partsOr(StrengthTrendPart, part, result, () =>
    table(
      ["date", "one-rep max", "low", "high"],
      result.table.map((day) => [day.date, day.oneRepMax, day.low, day.high]),
    ),
  );
}

/** The columns of a log of sets, as they were given. */
interface SetColumns {
  readonly load: unknown;
  readonly reps: unknown;
  readonly reserve: unknown;
  readonly date?: unknown;
}

/** The sets of a log that are whole: a row with anything missing is no set to learn from. */
function readSets(given: SetColumns) {
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

/** The three numbers that make a set, as most functions of this family take them. */
function setInputs(load: unknown, reps: unknown, reserve: unknown) {
  return {
    load: required(load, quantities.load()),
    reps: required(reps, quantities.reps()),
    reserve: recorded(reserve, quantities.reserve(), 0),
  };
}
