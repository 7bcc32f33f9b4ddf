import { expectPositive, expectWhole } from "../checks";
import type { Absent } from "../problem";
import { atMost, below } from "../statistics/compare";
import { requireProbability, upperP } from "../statistics/distributions";
import { type ExtraSpread, extraSpread } from "./extraSpread";
import { errorOfChange } from "./minimalDetectableChange";

/** How a squad's changes spread, and how much of that test error does by itself. */
export interface SquadResponse {
  readonly meanChange: number;
  readonly sdChange: number;
  /** The typical error of the test, in the same unit. */
  readonly typicalError: number;
  readonly threshold: number;
  /** The athletes behind the SD; without them nothing says how sure it is. */
  readonly n?: number | undefined;
  /** The degrees of freedom of the typical error; known exactly where not given. */
  readonly df?: number | undefined;
  readonly confidence: number;
}

/** What may be said of the spread of changes. */
export type SpreadReading =
  | "more spread than test error explains"
  | "all may have changed alike"
  | "say n to tell spread from test error";

/** How many would pass a threshold, and how much of that is error. */
export interface ResponseShare {
  /** The share of observed changes above the threshold. */
  readonly observedShare: number;
  /** The share that test error alone would put above it, had every athlete changed by the mean. */
  readonly shareIfAllAlike: number;
  /** The share of true changes above it, test error taken out. */
  readonly shareWithoutNoise: number | Absent;
  /** The SD of the true changes, and its interval. */
  readonly trueSd: number | Absent;
  readonly trueSdLow: number | Absent;
  readonly trueSdHigh: number | Absent;
  /** How likely so much spread is from test error alone. */
  readonly p: number | Absent;
  readonly reading: SpreadReading;
}

const MOST = 1e7;
const NO_MORE = { absent: "the changes spread no more than test error alone makes them" };
const NO_N = { absent: "without n, the number of athletes, nothing says how sure the spread is" };

/**
 * How many athletes would pass a threshold, and how much of that is test error: the observed spread of
 * changes holds √2 of the typical error, whatever training does. All three shares suppose normal changes.
 * That the observed spread is the larger one says little: by chance alone it is in every second squad.
 *
 * Source: Atkinson and Batterham 2015, Exp Physiol 100:577-588; Swinton et al. 2018, Front Nutr 5:41.
 *
 * @param squad - The changes' mean and SD, the test's error and the threshold.
 * @returns The shares, and whether the spread is more than error.
 * @throws BadInput where a value is out of its range.
 */
export function responseShare(squad: SquadResponse): ResponseShare {
  const { meanChange, sdChange, typicalError, threshold, confidence } = squad;
  expectPositive("sdChange", sdChange);
  requireProbability("confidence", confidence);
  const noise = errorOfChange(typicalError);
  const beyond = (sd: number): number => upperP((threshold - meanChange) / sd);
  const trueSd = atMost(sdChange, noise)
    ? NO_MORE
    : Math.sqrt((sdChange - noise) * (sdChange + noise));
  const spread = spreadBeyond(noise, squad);
  return {
    observedShare: beyond(sdChange),
    shareIfAllAlike: beyond(noise),
    shareWithoutNoise: typeof trueSd === "number" ? beyond(trueSd) : NO_MORE,
    trueSd,
    trueSdLow: spread.low,
    trueSdHigh: spread.high,
    p: spread.p,
    reading: reading(spread.p, 1 - confidence),
  };
}

function spreadBeyond(
  noise: number,
  { sdChange, n, df, confidence }: SquadResponse,
): Omit<ExtraSpread, "sd"> {
  if (n === undefined) return { low: NO_N, high: NO_N, p: NO_N };
  expectWhole("n", n, 2, MOST);
  return extraSpread({ sd: sdChange, df: n - 1 }, { sd: noise, df }, confidence);
}

function reading(p: number | Absent, alpha: number): SpreadReading {
  if (typeof p !== "number") return "say n to tell spread from test error";
  return below(p, alpha) ? "more spread than test error explains" : "all may have changed alike";
}
