import { required } from "../../cells";
import { responderDifference } from "../../core/testing/responderDifference";
import { liftReport } from "../answer";
import * as quantities from "../quantities";
import { confidenceSetting } from "../settings";

/**
 * @customenum {string}
 */
export enum ResponderDiffPart {
  /** Share of A. */
  shareA = "share A",
  /** Share of B. */
  shareB = "share B",
  /** Share of A less share of B. */
  difference = "difference",
  /** Lower end of its interval. */
  low = "low",
  /** Upper end of its interval. */
  high = "high",
  /** Fisher's exact p, two-sided. */
  p = "p",
}

/**
 * Did more athletes respond in one group than in the other? The difference of two shares, with an interval that is right for small groups too.
 *
 * @customfunction RESPONDERDIFF
 * @param respondersA How many of group A responded, 0 or more.
 * @param nA Athletes in group A.
 * @param respondersB How many of group B responded, 0 or more.
 * @param nB Athletes in group B.
 * @param [confidence] {@phrase confidence}
 * @param [part] {@phrase onePart difference}
 * @returns A report of two columns: share A, share B, difference, low, high, p.
 * @errors #VALUE! for more responders than athletes.
 * @example =SPARE.RESPONDERDIFF(9, 10, 3, 10)
 * @source Newcombe 1998, Stat Med 17:873-890, method 10; p: Fisher's exact test.
 */
export function responderDiff(
  respondersA: unknown[][],
  nA: unknown[][],
  respondersB: unknown[][],
  nB: unknown[][],
  confidence?: unknown[][],
  part?: ResponderDiffPart[][],
): unknown[][] {
  return liftReport(
    {
      respondersA: required(respondersA, quantities.count("respondersA")),
      nA: required(nA, quantities.groupSize("nA", 1)),
      respondersB: required(respondersB, quantities.count("respondersB")),
      nB: required(nB, quantities.groupSize("nB", 1)),
      confidence: confidenceSetting(confidence),
    },
    ResponderDiffPart,
    part,
    ({ respondersA, nA, respondersB, nB, confidence }) =>
      responderDifference(respondersA, nA, respondersB, nB, confidence),
  );
}
