import { partsOr, table } from "../../cells";
import { strengthTrend as trend } from "../../core/strength/strengthTrend";
import type { EquationChoice } from "../choices";
import { typed, type Given } from "../typed";
import { readSets } from "./readSets";
import { readTrendOptions, type TrendSetting } from "./trendOptions";

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
  /** Lower end of the rise's interval. */
  riseLow = "rise low",
  /** Upper end of the rise's interval. */
  riseHigh = "rise high",
  /** The chance that the 1RM has risen since the first day. */
  chanceOfRise = "chance of rise",
  /** Days with a set that counts. */
  days = "days",
  /** Sets that count. */
  sets = "sets",
}

/**
 * Today's one-repetition maximum from every logged set of one lifter and lift, with an interval that holds though neither the lifter's own curve nor the bias of their calls is known; and how far it has risen. Reps that only fall, tens down to threes, can pass for a rise where reserveSd is too small: take it from RESERVECHECK. For several lifters or lifts: SQUADTREND.
 *
 * @customfunction STRENGTHTREND
 * @param date {@phrase dayOfSet}
 * @param load {@phrase loadOfSet}
 * @param reps {@phrase repsDone}
 * @param [reserve] {@phrase reserveOfSet}
 * @param [reserveBias] {@phrase reserveBias}
 * @param [reserveSd] {@phrase reserveSd}
 * @param [maxReps] {@phrase mostRepsDone}
 * @param [equation] {@phrase equation}
 * @param [confidence] {@phrase confidence}
 * @param [curveSd] {@phrase curveSd}
 * @param [part] {@phrase parts today}
 * @returns A table with headings: date, one-rep max, low, high, a day a row. As parts: today, low, high, rise (a fraction), rise low, rise high, chance of rise, days, sets. A set at reserve 0 that another set of its day beats is taken for a warm-up and does not count.
 * @errors #N/A under 3 days with sets that count; #VALUE! naming the row for a bad cell. Sets past maxReps or the equation's reach are left out without an error.
 * @example =SPARE.STRENGTHTREND({46000;46003;46007;46010;46014}, {100;102.5;100;105;107.5}, {5;5;6;5;4}, {2;1;2;1;2}, , , , , , , "today")
 * @example =SPARE.STRENGTHTREND(A2:A200, B2:B200, C2:C200, D2:D200&"")
 * @source A level that drifts and wanders, by Kalman filter and smoother (Harvey 1989; Rauch, Tung and Striebel 1965), averaged over the sizes of its wanderings; priors chosen on simulated logs: docs/accuracy.md.
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
  curveSd?: unknown[][],
  part?: StrengthTrendPart[][],
): unknown[][] {
  const how = { reserveBias, reserveSd, maxReps, equation, confidence, curveSd };
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
  (cells: Given<"date" | "load" | "reps", "reserve" | TrendSetting>) =>
    trend(readSets(cells), readTrendOptions(cells)),
);
