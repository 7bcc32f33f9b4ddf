import { partsOr, readOne, setting, table } from "../../cells";
import { strengthTrend as trend } from "../../core/strength/strengthTrend";
import type { EquationChoice } from "../choices";
import { equationOf } from "../equation";
import * as quantities from "../quantities";
import { readConfidence } from "../settings";
import { typed, type Given } from "../typed";
import { readSets } from "./readSets";

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
 * @param reps {@phrase repsDone}
 * @param [reserve] Reps in reserve, 0 or more; 0 if omitted; a set without one is left out. Write D2:D50&"" so that a blank is not read as 0.
 * @param [reserveBias] How many reps more the lifter has left than they say, on average (the bias of RESERVECHECK); 0 if omitted.
 * @param [reserveSd] Spread of those calls in reps (the sd of RESERVECHECK), above 0; 1 if omitted.
 * @param [maxReps] Sets of more reps to failure than this are left out; 12 if omitted.
 * @param [equation] {@phrase equation}
 * @param [confidence] {@phrase confidence}
 * @param [part] {@phrase parts today}
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
  const how = { reserveBias, reserveSd, maxReps, equation, confidence };
  const result = computeStrengthTrend({ date, load, reps, reserve, ...how });
  return partsOr(StrengthTrendPart, part, result, () =>
    table(
      ["date", "one-rep max", "low", "high"],
      result.table.map((day) => [day.date, day.oneRepMax, day.low, day.high]),
    ),
  );
}

/** The typed half of STRENGTHTREND: today's 1RM, and the table of all days. */
export const computeStrengthTrend = typed(
  (
    cells: Given<
      "date" | "load" | "reps",
      "reserve" | "reserveBias" | "reserveSd" | "maxReps" | "equation" | "confidence"
    >,
  ) =>
    trend(readSets(cells), {
      equation: readOne(equationOf(cells.equation))!,
      reserveBias: readOne(setting(cells.reserveBias, quantities.anyNumber("reserveBias"), 0))!,
      reserveSd: readOne(setting(cells.reserveSd, quantities.above0("reserveSd"), 1))!,
      maxReps: readOne(setting(cells.maxReps, quantities.reps("maxReps"), 12))!,
      confidence: readConfidence(cells.confidence),
    }),
);
