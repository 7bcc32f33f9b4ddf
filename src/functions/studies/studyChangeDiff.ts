import { required } from "../../cells";
import { studyChangeDifference } from "../../core/studies/studyChangeDifference";
import { liftReport } from "../answer";
import * as quantities from "../quantities";
import { confidenceSetting } from "../settings";

/**
 * @customenum {string}
 */
export enum StudyChangeDiffPart {
  /** Change of A less change of B, in the paper's units. */
  difference = "difference",
  /** It in units of the pooled SD before, corrected for small samples. */
  effectSize = "effect size",
  /** Its standard error, for POOLSTUDIES. */
  effectStandardError = "effect standard error",
  /** Lower end of the effect size's interval. */
  effectLow = "effect low",
  /** Upper end of the effect size's interval. */
  effectHigh = "effect high",
}

/**
 * How much more one group changed than the other, from a paper's before-and-after table. Papers seldom print the correlation of before and after; try several, it touches the standard error only.
 *
 * @customfunction STUDYCHANGEDIFF
 * @param beforeA Mean of group A before.
 * @param afterA Mean of group A after.
 * @param sdBeforeA Standard deviation of group A before, above 0.
 * @param nA {@phrase groupSize A}
 * @param beforeB Mean of group B before.
 * @param afterB Mean of group B after.
 * @param sdBeforeB Standard deviation of group B before, above 0.
 * @param nB {@phrase groupSize B}
 * @param correlation Correlation of before and after, −1 to 1; a range of them where part is given.
 * @param [confidence] {@phrase confidence}
 * @param [part] {@phrase onePart effect size}
 * @returns A report of two columns: difference, effect size, effect standard error, effect low, effect high.
 * @errors #N/A under 5 athletes in all; #VALUE! for a spread, a group size or a correlation that cannot be.
 * @example =SPARE.STUDYCHANGEDIFF(30.6, 38.5, 15, 20, 23.1, 19.7, 13.8, 20, 0.47)
 * @source Morris 2008, Organ Res Methods 11:364-386.
 */
export function studyChangeDiff(
  beforeA: unknown[][],
  afterA: unknown[][],
  sdBeforeA: unknown[][],
  nA: unknown[][],
  beforeB: unknown[][],
  afterB: unknown[][],
  sdBeforeB: unknown[][],
  nB: unknown[][],
  correlation: unknown[][],
  confidence?: unknown[][],
  part?: StudyChangeDiffPart[][],
): unknown[][] {
  return liftReport(
    {
      beforeA: required(beforeA, quantities.anyNumber("beforeA", "a mean")),
      afterA: required(afterA, quantities.anyNumber("afterA", "a mean")),
      sdBeforeA: required(sdBeforeA, quantities.spread("sdBeforeA")),
      nA: required(nA, quantities.groupSize("nA")),
      beforeB: required(beforeB, quantities.anyNumber("beforeB", "a mean")),
      afterB: required(afterB, quantities.anyNumber("afterB", "a mean")),
      sdBeforeB: required(sdBeforeB, quantities.spread("sdBeforeB")),
      nB: required(nB, quantities.groupSize("nB")),
      correlation: required(correlation, quantities.correlation()),
      confidence: confidenceSetting(confidence),
    },
    StudyChangeDiffPart,
    part,
    (study) =>
      studyChangeDifference(
        { before: study.beforeA, after: study.afterA, sdBefore: study.sdBeforeA, n: study.nA },
        { before: study.beforeB, after: study.afterB, sdBefore: study.sdBeforeB, n: study.nB },
        study.correlation,
        study.confidence,
      ),
  );
}
