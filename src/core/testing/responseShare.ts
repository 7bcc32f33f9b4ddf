import { expectPositive } from "../checks";
import type { Absent } from "../problem";
import { atMost } from "../statistics/compare";
import { upperP } from "../statistics/distributions";
import { errorOfChange } from "./minimalDetectableChange";

export interface ResponseShare {
  /** The share of observed changes above the threshold. */
  readonly observedShare: number;
  /** The share that test error alone would put above it, had every athlete changed by the mean. */
  readonly shareIfAllAlike: number;
  /** The share of true changes above it, test error taken out. */
  readonly shareWithoutNoise: number | Absent;
  /** The SD of the true changes. */
  readonly trueSd: number | Absent;
  readonly reading: string;
}

/**
 * How many athletes would pass a threshold, and how much of that is test error: the observed spread of
 * changes holds √2 of the typical error, whatever training does. All three shares suppose normal changes.
 *
 * Source: Atkinson and Batterham 2015, Exp Physiol 100:577-588; Swinton et al. 2018, Front Nutr 5:41.
 */
export function responseShare(
  meanChange: number,
  sdChange: number,
  typicalError: number,
  threshold: number,
): ResponseShare {
  expectPositive("sdChange", sdChange);
  const noise = errorOfChange(typicalError);
  const beyond = (sd: number): number => upperP((threshold - meanChange) / sd);
  const shares = { observedShare: beyond(sdChange), shareIfAllAlike: beyond(noise) };
  if (atMost(sdChange, noise)) {
    const absent = "the changes spread no more than test error alone makes them";
    return {
      ...shares,
      shareWithoutNoise: { absent },
      trueSd: { absent },
      reading: "no sign that athletes responded differently: test error alone spreads this much",
    };
  }
  const trueSd = Math.sqrt((sdChange - noise) * (sdChange + noise));
  return {
    ...shares,
    shareWithoutNoise: beyond(trueSd),
    trueSd,
    reading: "the changes spread more than test error alone would make them",
  };
}
