import { recorded, required, setting } from "../cells";
import { e1rm as estimate, e1rmBand as band } from "../core/strength/oneRepMax";
import { fractionAt } from "../core/strength/equations";
import { repsAtLoad } from "../core/strength/repsAtLoad";
import { lift, liftRow } from "./answer";
import type { EquationChoice } from "./choices";
import { equationOf } from "./equation";
import * as quantities from "./quantities";

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

/** The three numbers that make a set, as most functions of this family take them. */
function setInputs(load: unknown, reps: unknown, reserve: unknown) {
  return {
    load: required(load, quantities.load()),
    reps: required(reps, quantities.reps()),
    reserve: recorded(reserve, quantities.reserve(), 0),
  };
}
