import { blockColumns, report } from "../../cells";
import { reliability as analyseTrials } from "../../core/testing/reliability";
import { transposed } from "../../core/transposed";
import { readWholeRows } from "../pairs";
import * as quantities from "../quantities";
import { readConfidence } from "../settings";
import { typed, type Given } from "../typed";

/**
 * @customenum {string}
 */
export enum ReliabilityPart {
  /** Athletes with every trial. */
  n = "n",
  /** Athletes left out because a trial is missing. */
  dropped = "dropped",
  /** Trials, a column each. */
  trials = "trials",
  /** Mean of the last trial less the first: learning or tiredness. */
  shift = "shift",
  /** Lower end of the shift's interval. */
  shiftLow = "shift low",
  /** Upper end of the shift's interval. */
  shiftHigh = "shift high",
  /** The change of one athlete that test error alone rarely makes, in the test's unit. DETECTABLE is another thing: the difference between two groups that a study finds. */
  detectableChange = "detectable change",
  /** The wobble of one score, as a standard deviation. */
  typicalError = "typical error",
  /** Its degrees of freedom, (athletes − 1) × (trials − 1), which MDC and CHANGESCORE ask for. */
  df = "df",
  /** Lower end of the typical error's interval. */
  errorLow = "error low",
  /** Upper end of the typical error's interval. */
  errorHigh = "error high",
  /** The typical error as a fraction of the mean. */
  errorPercent = "error percent",
  /** ICC(3,1): how well one trial ranks the athletes, a shift set aside. */
  iccConsistency = "icc consistency",
  /** Lower end of its interval. */
  iccConsistencyLow = "icc consistency low",
  /** Upper end of its interval. */
  iccConsistencyHigh = "icc consistency high",
  /** ICC(2,1): as consistency, but a shift between trials counts as disagreement. */
  iccAgreement = "icc agreement",
  /** Lower end of its interval. */
  iccAgreementLow = "icc agreement low",
  /** Upper end of its interval. */
  iccAgreementHigh = "icc agreement high",
}

/**
 * How far a test can be trusted: the same athletes tested several times with no training between. Its typical error and df go into MDC, CHANGESCORE and SQUADCHANGE.
 *
 * @customfunction RELIABILITY
 * @param trials A row an athlete, a column a trial, at least two of each; 0 counts as blank.
 * @param [confidence] {@phrase confidence}
 * @param [part] {@phrase parts typical error}
 * @returns A report of two columns: n, dropped, trials, shift, detectable change (of one athlete; for the difference between two groups see DETECTABLE), typical error, df, error percent, and the intraclass correlations, with their intervals. One error stands for all: where it grows with the score, judge the strongest by themselves.
 * @errors #N/A under 2 athletes with every trial; #VALUE! naming the row for a bad cell.
 * @example =SPARE.RELIABILITY({146,140;148,152;170,152;90,99;157,145;156,153;176,167;205,218})
 * @example =SPARE.RELIABILITY(B2:C20, , "typical error")
 * @source Weir 2005, J Strength Cond Res 19:231-240; Shrout and Fleiss 1979, Psychol Bull 86:420-428; McGraw and Wong 1996, Psychol Methods 1:30-46.
 */
export function reliability(
  trials: unknown[][],
  confidence?: unknown[][],
  part?: ReliabilityPart[][],
): unknown[][] {
  return report(ReliabilityPart, part, computeReliability({ trials, confidence }));
}

/** The typed half of RELIABILITY: the test's error and correlations, and how many athletes were left out. */
export const computeReliability = typed((cells: Given<"trials", "confidence">) => {
  const trials = blockColumns(cells.trials, quantities.score("trials"));
  const { columns, dropped } = readWholeRows(trials);
  const level = readConfidence(cells.confidence);
  return { ...analyseTrials(transposed(Object.values(columns)), level), dropped };
});
