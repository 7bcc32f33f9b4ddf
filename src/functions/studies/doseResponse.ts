import { isGiven, partsOr, readList, report, table } from "../../cells";
import { doseResponse as regress, effectsAtDoses } from "../../core/studies/doseResponse";
import { blankUnlessGiven } from "../blankUnlessGiven";
import * as quantities from "../quantities";
import { readConfidence, readWord } from "../settings";
import { typed, type Given } from "../typed";
import { IntervalChoice } from "./choices";
import { readStudies } from "./readStudies";

/**
 * @customenum {string}
 */
export enum DoseResponsePart {
  /** How many studies. */
  studies = "studies",
  /** The effect at dose 0. */
  intercept = "intercept",
  /** How much the effect rises for one more unit of dose. */
  slope = "slope",
  /** Its standard error. */
  slopeStandardError = "slope standard error",
  /** Lower end of the slope's interval. */
  low = "low",
  /** Upper end of the slope's interval. */
  high = "high",
  /** Slope over standard error. */
  statistic = "statistic",
  /** How likely such a slope is without any, two-sided. */
  p = "p",
  /** How much studies of one dose differ, as a standard deviation. */
  betweenStudySd = "between-study sd",
}

/**
 * Does more of it do more? A straight line of the studies' effects on their doses (sets a week, reps in reserve), each study weighted by its precision.
 *
 * @customfunction DOSERESPONSE
 * @param doses The studies' doses, a row a study; 0 is a value.
 * @param effects Their effects; 0 is a value.
 * @param standardErrors {@phrase standardErrors}
 * @param [at] Doses, a row or a column, at which to give the effect; the result is then a table.
 * @param [interval] "t" if omitted (Knapp and Hartung, never built on less scatter than the studies' own errors make), "t unheld" or "z".
 * @param [confidence] {@phrase confidence}
 * @param [part] {@phrase parts slope}
 * @returns A report of two columns: studies, intercept, slope, slope standard error, low, high, statistic, p, between-study sd. With at, a table: dose, estimate, low, high, inside. Inside says whether the studies' doses reach that far; beyond them ("no") the line is a guess.
 * @errors #N/A under 3 studies, or without 2 different doses; #VALUE! naming the row for a bad cell.
 * @example =SPARE.DOSERESPONSE({0;1;2;3;4}, {0.55;0.5;0.38;0.35;0.2}, {0.15;0.2;0.18;0.12;0.2})
 * @source Random-effects meta-regression by REML; Knapp and Hartung 2003, Stat Med 22:2693-2710, held as in Röver, Knapp and Friede 2015.
 */
export function doseResponse(
  doses: unknown[][],
  effects: unknown[][],
  standardErrors: unknown[][],
  at?: unknown[][],
  interval?: IntervalChoice[][],
  confidence?: unknown[][],
  part?: DoseResponsePart[][],
): unknown[][] {
  const cells = { doses, effects, standardErrors, at, interval, confidence };
  const { line, atDoses } = computeDoseResponse(cells);
  return partsOr(DoseResponsePart, part, line, () =>
    atDoses.length === 0
      ? report(DoseResponsePart, part, line)
      : table(
          ["dose", "estimate", "low", "high", "inside"],
          atDoses.map((row) => [
            row.dose,
            row.estimate,
            row.low,
            row.high,
            row.inside ? "yes" : "no",
          ]),
        ),
  );
}

/** The typed half of DOSERESPONSE: the line, and the effect at each dose that was asked for. */
export const computeDoseResponse = typed(
  (cells: Given<"doses" | "effects" | "standardErrors", "at" | "interval" | "confidence">) => {
    const dose = quantities.anyNumber("doses", "a dose");
    const { columns } = readStudies(cells.effects, cells.standardErrors, {
      doses: { given: blankUnlessGiven(cells.doses), quantity: dose },
    });
    const studies = [columns.doses, columns.effects, columns.standardErrors] as const;
    const options = {
      interval: readWord(cells.interval, "interval", IntervalChoice, IntervalChoice.t),
      confidence: readConfidence(cells.confidence),
    };
    const wanted = isGiven(cells.at) ? readList(cells.at, { ...dose, name: "at" }) : [];
    return {
      line: regress(...studies, options),
      atDoses: wanted.length === 0 ? [] : effectsAtDoses(...studies, wanted, options),
    };
  },
);
