import { required } from "../../cells";
import { responseShare as shareOfResponse } from "../../core/testing/responseShare";
import { liftReport } from "../answer";
import * as quantities from "../quantities";

/**
 * @customenum {string}
 */
export enum ResponseSharePart {
  /** The share of observed changes above the threshold. */
  observedShare = "observed share",
  /** The share that test error alone would put above it, had everyone changed by the mean. */
  shareIfAllAlike = "share if all alike",
  /** The share of true changes above it, test error taken out. */
  shareWithoutNoise = "share without noise",
  /** The spread of the true changes. */
  trueSd = "true sd",
  /** What it comes to, in one sentence. */
  reading = "reading",
}

/**
 * How many athletes pass a threshold, and how much of that test error does by itself: a squad in which everyone gained the same still shows "responders" and "non-responders".
 *
 * @customfunction RESPONSESHARE
 * @param meanChange The mean change of the squad; 0 is a value.
 * @param sdChange The standard deviation of the changes, above 0.
 * @param typicalError The typical error of the test, above 0, in the same unit.
 * @param threshold The change to exceed; 0 is a value.
 * @param [part] {@phrase onePart share without noise}
 * @returns A report of two columns: observed share, share if all alike, share without noise, true sd, reading. Shares are fractions.
 * @errors #N/A for a part that does not exist because the changes spread no more than test error makes them.
 * @example =SPARE.RESPONSESHARE(5, 6, 2.5, 4)
 * @source Atkinson and Batterham 2015, Exp Physiol 100:577-588; Swinton et al. 2018, Front Nutr 5:41.
 */
export function responseShare(
  meanChange: unknown[][],
  sdChange: unknown[][],
  typicalError: unknown[][],
  threshold: unknown[][],
  part?: ResponseSharePart[][],
): unknown[][] {
  return liftReport(
    {
      meanChange: required(meanChange, quantities.anyNumber("meanChange", "a mean change")),
      sdChange: required(sdChange, quantities.spread("sdChange")),
      typicalError: required(typicalError, quantities.spread("typicalError")),
      threshold: required(threshold, quantities.anyNumber("threshold", "a change")),
    },
    ResponseSharePart,
    part,
    ({ meanChange, sdChange, typicalError, threshold }) =>
      shareOfResponse(meanChange, sdChange, typicalError, threshold),
  );
}
