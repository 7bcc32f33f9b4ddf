import { required, setting } from "../../cells";
import { responseShare as shareOfResponse } from "../../core/testing/responseShare";
import { liftReport } from "../answer";
import * as quantities from "../quantities";
import { errorInputs } from "./errorInputs";

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
  /** Lower end of its interval. */
  trueSdLow = "true sd low",
  /** Upper end of its interval. */
  trueSdHigh = "true sd high",
  /** How likely so much spread is from test error alone, all having changed alike. */
  p = "p",
  /** What it comes to, in one sentence. */
  reading = "reading",
}

/**
 * How many athletes pass a threshold, and how much of that test error does by itself: a squad in which everyone gained the same still shows "responders" and "non-responders", and in every second one the changes spread more than test error. Say n to know whether that means anything.
 *
 * @customfunction RESPONSESHARE
 * @param meanChange The mean change of the squad; 0 is a value.
 * @param sdChange The standard deviation of the changes, above 0.
 * @param typicalError {@phrase typicalError}
 * @param threshold The change to exceed; 0 is a value.
 * @param [n] How many athletes the standard deviation of the changes comes from, 2 or more; no interval and no p if omitted.
 * @param [df] Degrees of freedom of the typical error, the "df" of RELIABILITY; the error is taken as known exactly if omitted.
 * @param [confidence] {@phrase confidence}
 * @param [part] {@phrase onePart share without noise}
 * @returns A report of two columns: observed share, share if all alike, share without noise, true sd, true sd low, true sd high, p, reading ("more spread than test error explains", "all may have changed alike" or "say n to tell spread from test error"). Shares are fractions.
 * @errors #N/A for a part that does not exist: true sd and share without noise where the changes spread no more than test error makes them, the interval and p without n; #VALUE! for an n that is not a whole number of 2 or more.
 * @example =SPARE.RESPONSESHARE(5, 6, 2.5, 4, 20, 14)
 * @example =SPARE.RESPONSESHARE(5, 6, 2.5, 4, 20, 14, , "reading")
 * @source Atkinson and Batterham 2015, Exp Physiol 100:577-588; Swinton et al. 2018, Front Nutr 5:41; interval: Zou and Donner 2008, Stat Med 27:1693-1702.
 */
export function responseShare(
  meanChange: unknown[][],
  sdChange: unknown[][],
  typicalError: unknown[][],
  threshold: unknown[][],
  n?: unknown[][],
  df?: unknown[][],
  confidence?: unknown[][],
  part?: ResponseSharePart[][],
): unknown[][] {
  return liftReport(
    {
      meanChange: required(meanChange, quantities.anyNumber("meanChange", "a mean change")),
      sdChange: required(sdChange, quantities.spread("sdChange")),
      threshold: required(threshold, quantities.anyNumber("threshold", "a change")),
      n: setting(n, quantities.groupSize("n"), undefined),
      ...errorInputs({ typicalError, confidence, df }),
    },
    ResponseSharePart,
    part,
    shareOfResponse,
  );
}
