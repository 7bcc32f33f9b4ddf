import { report } from "../../cells";
import { pairedChange as comparePairs } from "../../core/testing/pairedChange";
import { readPairs } from "../pairs";
import { readConfidence } from "../settings";
import { typed, type Given } from "../typed";

/**
 * @customenum {string}
 */
export enum PairedChangePart {
  /** Athletes with both scores. */
  n = "n",
  /** Athletes left out because a score is missing. */
  dropped = "dropped",
  /** Mean score before. */
  meanBefore = "mean before",
  /** Mean score after. */
  meanAfter = "mean after",
  /** Mean change. */
  meanChange = "mean change",
  /** Spread of the changes. */
  sdOfChange = "sd of change",
  /** Standard error of the mean change. */
  standardError = "standard error",
  /** Lower end of the mean change's interval. */
  low = "low",
  /** Upper end of the mean change's interval. */
  high = "high",
  /** Student's t. */
  t = "t",
  /** Its degrees of freedom. */
  df = "df",
  /** How likely such a mean change is by chance alone, two-sided. */
  p = "p",
  /** The change in units of the spread before, corrected for small samples. */
  effectSize = "effect size",
  /** Its standard error. */
  effectStandardError = "effect standard error",
}

/**
 * Did this group change? The mean change of athletes tested before and after, with its interval and its size. One group alone cannot say that the training did it.
 *
 * @customfunction PAIREDCHANGE
 * @param before {@phrase scoresBefore}
 * @param after {@phrase scoresAfter}
 * @param [confidence] {@phrase confidence}
 * @param [part] {@phrase parts mean change}
 * @returns A report of two columns: n, dropped, mean before, mean after, mean change, sd of change, standard error, low, high, t, df, p, effect size, effect standard error. Among few athletes of whom most gain little and a few much, the interval holds in 89%, not 95%.
 * @errors #N/A without a complete pair; #VALUE! naming the row for a bad cell.
 * @example =SPARE.PAIREDCHANGE({100;110;95;120;105}, {104;113;97;126;106})
 * @source Student 1908, Biometrika 6:1-25; effect size: Becker 1988, Br J Math Stat Psychol 41:257-278.
 */
export function pairedChange(
  before: unknown[][],
  after: unknown[][],
  confidence?: unknown[][],
  part?: PairedChangePart[][],
): unknown[][] {
  return report(PairedChangePart, part, computePairedChange({ before, after, confidence }));
}

/** The typed half of PAIREDCHANGE: the mean change, and how many athletes were left out. */
export const computePairedChange = typed((cells: Given<"before" | "after", "confidence">) => {
  const { columns, dropped } = readPairs(cells.before, cells.after);
  const level = readConfidence(cells.confidence);
  return { ...comparePairs(columns.before, columns.after, level), dropped };
});
