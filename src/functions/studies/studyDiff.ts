import { required } from "../../cells";
import { studyDifference } from "../../core/studies/studyDifference";
import { liftReport } from "../answer";
import * as quantities from "../quantities";
import { confidenceSetting } from "../settings";

/**
 * @customenum {string}
 */
export enum StudyDiffPart {
  /** Mean of A less mean of B, in the paper's units. */
  difference = "difference",
  /** Its standard error. */
  standardError = "standard error",
  /** Lower end of its interval. */
  low = "low",
  /** Upper end of its interval. */
  high = "high",
  /** Welch's t. */
  t = "t",
  /** Its degrees of freedom. */
  df = "df",
  /** How likely such a difference is by chance alone, two-sided. */
  p = "p",
  /** Hedges' g: the difference over the pooled SD, corrected for small samples. */
  effectSize = "effect size",
  /** Its standard error, for POOLSTUDIES. */
  effectStandardError = "effect standard error",
  /** Lower end of the effect size's interval. */
  effectLow = "effect low",
  /** Upper end of the effect size's interval. */
  effectHigh = "effect high",
}

/**
 * The difference of two groups from what a paper's table prints: means, SDs and group sizes. As an effect size it goes straight into POOLSTUDIES; that supposes two groups of about the same spread.
 *
 * @customfunction STUDYDIFF
 * @param meanA Mean of group A; 0 is a value.
 * @param sdA Standard deviation of group A, above 0.
 * @param nA {@phrase groupSize A}
 * @param meanB Mean of group B.
 * @param sdB Standard deviation of group B, above 0.
 * @param nB {@phrase groupSize B}
 * @param [confidence] {@phrase confidence}
 * @param [part] {@phrase onePart effect size}
 * @returns A report of two columns: difference, standard error, low, high, t, df, p, effect size, effect standard error, effect low, effect high.
 * @errors #VALUE! for a spread or a group size that cannot be.
 * @example =SPARE.STUDYDIFF(103, 5.5, 50, 100, 4.5, 50)
 * @example =SPARE.STUDYDIFF(B2:B6, C2:C6, D2:D6, E2:E6, F2:F6, G2:G6, , "effect size")
 * @source Welch 1947, Biometrika 34:28-35; Hedges 1981, J Educ Stat 6:107-128.
 */
export function studyDiff(
  meanA: unknown[][],
  sdA: unknown[][],
  nA: unknown[][],
  meanB: unknown[][],
  sdB: unknown[][],
  nB: unknown[][],
  confidence?: unknown[][],
  part?: StudyDiffPart[][],
): unknown[][] {
  return liftReport(
    {
      meanA: required(meanA, quantities.anyNumber("meanA", "a mean")),
      sdA: required(sdA, quantities.spread("sdA")),
      nA: required(nA, quantities.groupSize("nA")),
      meanB: required(meanB, quantities.anyNumber("meanB", "a mean")),
      sdB: required(sdB, quantities.spread("sdB")),
      nB: required(nB, quantities.groupSize("nB")),
      confidence: confidenceSetting(confidence),
    },
    StudyDiffPart,
    part,
    ({ meanA, sdA, nA, meanB, sdB, nB, confidence }) =>
      studyDifference({ mean: meanA, sd: sdA, n: nA }, { mean: meanB, sd: sdB, n: nB }, confidence),
  );
}
