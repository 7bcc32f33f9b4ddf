import { readOne, report, required, single } from "../../cells";
import { riseCompare as compare } from "../../core/strength/riseCompare";
import type { EquationChoice } from "../choices";
import * as quantities from "../quantities";
import { typed, type Given } from "../typed";
import { readSets } from "./readSets";
import { readTrendOptions, type TrendSetting } from "./trendOptions";

/**
 * @customenum {string}
 */
export enum RiseComparePart {
  /** The rise a week before the change, a fraction. */
  before = "before",
  /** Lower end of its interval. */
  beforeLow = "before low",
  /** Upper end of its interval. */
  beforeHigh = "before high",
  /** The rise a week after the change, a fraction. */
  after = "after",
  /** Lower end of its interval. */
  afterLow = "after low",
  /** Upper end of its interval. */
  afterHigh = "after high",
  /** The rise a week after less the one before. */
  difference = "difference",
  /** Lower end of the difference's interval. */
  low = "low",
  /** Upper end of the difference's interval. */
  high = "high",
  /** The chance that the lifter rose faster after the change than before it. */
  chanceOfAFasterRise = "chance of a faster rise",
  /** Days with a set that counts, before the change. */
  daysBefore = "days before",
  /** Days with a set that counts, from the change on. */
  daysAfter = "days after",
  /** Sets that count. */
  sets = "sets",
}

/**
 * Whether a change of training made one lifter rise faster: the weekly rise of the one-repetition maximum before a date and from it on, their difference with its interval, and the chance that the rise is faster now.
 *
 * @customfunction RISECOMPARE
 * @param changeDate The first day of the new training; one date.
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
 * @param [part] {@phrase parts difference}
 * @returns A report of two columns: before (low, high), after (low, high), difference (low, high), chance of a faster rise, days before, days after, sets. Rises are fractions a week: 0.01 is 1%.
 * @errors #N/A under 3 days with sets that count on either side of the change; #VALUE! naming the row for a bad cell.
 * @example =SPARE.RISECOMPARE(46010, {46000;46002;46005;46010;46012;46015}, {100;100;101;105;107.5;110}, 5, {2;2;2;2;2;2})
 * @example =SPARE.RISECOMPARE(G1, A2:A200, B2:B200, C2:C200, D2:D200&"", , , , , , , "chance of a faster rise")
 * @source The model of STRENGTHTREND with a drift for each block; its coverage in simulated logs: docs/accuracy.md.
 */
export function riseCompare(
  changeDate: unknown[][],
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
  part?: RiseComparePart[][],
): unknown[][] {
  const how = { reserveBias, reserveSd, maxReps, equation, confidence, curveSd };
  const result = computeRiseCompare({ changeDate, date, load, reps, reserve, ...how });
  return result === null ? single("") : report(RiseComparePart, part, result);
}

/** The typed half of RISECOMPARE; nothing while the date of the change is blank. */
export const computeRiseCompare = typed(
  (cells: Given<"changeDate" | "date" | "load" | "reps", "reserve" | TrendSetting>) => {
    const change = readOne(required(cells.changeDate, quantities.above0("changeDate", "a date")));
    const sets = readSets(cells);
    const options = readTrendOptions(cells);
    return change === null ? null : compare(change, sets, options);
  },
);
