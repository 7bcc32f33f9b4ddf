import type { Absent } from "../problem";
import { fQuantile } from "../statistics/distributions";
import type { TwoWayAnova } from "./twoWayAnova";

/** An intraclass correlation and its interval. */
export interface Intraclass {
  readonly icc: number | Absent;
  readonly low: number | Absent;
  readonly high: number | Absent;
}

function absent(reason: string): Intraclass {
  const none = { absent: reason };
  return { icc: none, low: none, high: none };
}

const NO_SPREAD = "athletes do not differ, so there is nothing to tell them apart by";
const NO_ERROR = "the trials agree exactly, so there is no error to judge by";

/**
 * ICC(3,1), consistency: how well one trial ranks and spaces the athletes, a shift of everyone between
 * trials set aside.
 *
 * Source: Shrout and Fleiss 1979, Psychol Bull 86:420-428; McGraw and Wong 1996, Psychol Methods 1:30-46.
 */
export function iccConsistency(table: TwoWayAnova, confidence: number): Intraclass {
  const { trials: k, athletes: n, betweenAthletes, error, errorDf } = table;
  const whole = betweenAthletes + (k - 1) * error;
  if (whole === 0) return absent(NO_SPREAD);
  const icc = (betweenAthletes - error) / whole;
  if (error === 0) return { ...absent(NO_ERROR), icc };
  const f = betweenAthletes / error;
  const upper = (1 + confidence) / 2;
  const low = f / fQuantile(upper, n - 1, errorDf);
  const high = f * fQuantile(upper, errorDf, n - 1);
  return { icc, low: (low - 1) / (low + k - 1), high: (high - 1) / (high + k - 1) };
}

/**
 * ICC(2,1), agreement: as consistency, but a shift between trials counts as disagreement. The interval's
 * degrees of freedom are Satterthwaite's approximation.
 *
 * Source: Shrout and Fleiss 1979; McGraw and Wong 1996, table 7.
 */
export function iccAgreement(table: TwoWayAnova, confidence: number): Intraclass {
  const { athletes: n, trials: k, betweenAthletes, betweenTrials, error, errorDf } = table;
  const noise = k * betweenTrials + (k * n - k - n) * error;
  const whole = n * betweenAthletes + noise;
  if (whole === 0) return absent(NO_SPREAD);
  const icc = (n * (betweenAthletes - error)) / whole;
  if (error === 0 && betweenTrials === 0) return { ...absent(NO_ERROR), icc };

  const odds = (k * icc) / (n * (1 - icc));
  const shiftPart = odds * betweenTrials;
  const errorPart = (1 + odds * (n - 1)) * error;
  const df = (shiftPart + errorPart) ** 2 / (shiftPart ** 2 / (k - 1) + errorPart ** 2 / errorDf);
  // Below 0 the two parts pull against each other, and the approximation has nothing left to stand on.
  if (!(df >= 1)) return { ...absent("agreement is too low for an interval"), icc };

  const upper = (1 + confidence) / 2;
  const low = fQuantile(upper, n - 1, df);
  const high = fQuantile(upper, df, n - 1);
  return {
    icc,
    low: (n * (betweenAthletes - low * error)) / (low * noise + n * betweenAthletes),
    high: (n * (high * betweenAthletes - error)) / (noise + n * high * betweenAthletes),
  };
}
