import { report } from "../../cells";
import { poolStudies as pool } from "../../core/studies/poolStudies";
import { readConfidence, readWord } from "../settings";
import { typed, type Given } from "../typed";
import { PoolMethodChoice, IntervalChoice } from "./choices";
import { readStudies } from "./readStudies";

/**
 * @customenum {string}
 */
export enum PoolStudiesPart {
  /** How many studies. */
  studies = "studies",
  /** The pooled effect. */
  estimate = "estimate",
  /** Its standard error. */
  standardError = "standard error",
  /** Lower end of its interval. */
  low = "low",
  /** Upper end of its interval. */
  high = "high",
  /** Estimate over standard error. */
  statistic = "statistic",
  /** How likely such an estimate is without any effect, two-sided. */
  p = "p",
  /** How much true effects differ between studies, as a standard deviation. */
  betweenStudySd = "between-study sd",
  /** That, squared. */
  betweenStudyVariance = "between-study variance",
  /** The share of the scatter that lies between studies (I squared), a fraction. */
  shareBetweenStudies = "share between studies",
  /** Cochran's Q. */
  q = "q",
  /** The chance of so large a Q from studies that differ by chance alone. */
  qP = "q p",
  /** Lower end of where one more study's true effect would lie. */
  predictLow = "predict low",
  /** Upper end of where one more study's true effect would lie. */
  predictHigh = "predict high",
}

/**
 * Pools the effects of several studies into one, and says how much studies differ: the prediction interval is where the next study, or your squad, would lie.
 *
 * @customfunction POOLSTUDIES
 * @param effects The studies' effects, a row a study; 0 is a value.
 * @param standardErrors {@phrase standardErrors}
 * @param [method] "reml" if omitted, "dl" or "fixed".
 * @param [interval] "t" if omitted (Hartung and Knapp), or "z". "fixed" is always "z".
 * @param [confidence] {@phrase confidence}
 * @param [part] {@phrase parts estimate}
 * @returns A report of two columns: studies, estimate, standard error, low, high, statistic, p, between-study sd and variance, share between studies, q, q p, predict low, predict high.
 * @errors #N/A without a study; #VALUE! naming the row for a bad cell.
 * @example =SPARE.POOLSTUDIES({0.31;0.12;0.55;0.2;0.43}, {0.15;0.22;0.3;0.12;0.25})
 * @source REML: Harville 1977; Hartung and Knapp 2001, Stat Med 20:3875-3889; DerSimonian and Laird 1986; prediction: Higgins, Thompson and Spiegelhalter 2009.
 */
export function poolStudies(
  effects: unknown[][],
  standardErrors: unknown[][],
  method?: PoolMethodChoice[][],
  interval?: IntervalChoice[][],
  confidence?: unknown[][],
  part?: PoolStudiesPart[][],
): unknown[][] {
  const pooled = computePoolStudies({ effects, standardErrors, method, interval, confidence });
  return report(PoolStudiesPart, part, pooled);
}

/** The typed half of POOLSTUDIES. */
export const computePoolStudies = typed(
  (cells: Given<"effects" | "standardErrors", "method" | "interval" | "confidence">) => {
    const { columns } = readStudies(cells.effects, cells.standardErrors);
    return pool(columns.effects, columns.standardErrors, {
      method: readWord(cells.method, "method", PoolMethodChoice, PoolMethodChoice.reml),
      interval: readWord(cells.interval, "interval", IntervalChoice, IntervalChoice.t),
      confidence: readConfidence(cells.confidence),
    });
  },
);
