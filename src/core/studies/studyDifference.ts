import { difference as differenceOf } from "../statistics/compare";
import {
  criticalValue,
  hedgesCorrection,
  requireProbability,
  twoSidedP,
} from "../statistics/distributions";
import { requireGroupSize, requireNumber, requirePositive } from "./inputs";

/** One group's line of a paper's table. */
export interface GroupSummary {
  readonly mean: number;
  readonly sd: number;
  readonly n: number;
}

/** What a paper's table says of two groups. */
export interface StudyDifference {
  readonly difference: number;
  readonly standardError: number;
  readonly low: number;
  readonly high: number;
  readonly t: number;
  readonly df: number;
  readonly p: number;
  readonly effectSize: number;
  readonly effectStandardError: number;
  readonly effectLow: number;
  readonly effectHigh: number;
}

/**
 * The difference of two groups, A − B, from what a paper's table prints.
 *
 * In the paper's units with Welch's test, which lets the groups' spreads differ (Welch 1947, Biometrika
 * 34:28-35); and as Hedges' g, the difference over the pooled SD, times the exact correction J for small
 * samples (Hedges 1981, J Educ Stat 6:107-128), with variance 1/nA + 1/nB + g² / (2 (nA + nB)) (Hedges and
 * Olkin 1985) and the normal interval that pooling supposes.
 *
 * @param a - Group A, in the test's unit.
 * @param b - Group B, in the test's unit.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns The difference and the effect size, with intervals.
 * @throws BadInput where a mean, SD or n cannot be.
 */
export function studyDifference(
  a: GroupSummary,
  b: GroupSummary,
  confidence = 0.95,
): StudyDifference {
  requireGroup("A", a);
  requireGroup("B", b);
  requireProbability("confidence", confidence);

  const difference = differenceOf(a.mean, b.mean);
  const [varianceA, varianceB] = [a.sd ** 2 / a.n, b.sd ** 2 / b.n];
  const standardError = Math.sqrt(varianceA + varianceB);
  const shareA = varianceA / (varianceA + varianceB);
  const df = 1 / (shareA ** 2 / (a.n - 1) + (1 - shareA) ** 2 / (b.n - 1));
  const t = difference / standardError;
  const reach = criticalValue(confidence, df) * standardError;

  const pooledDf = a.n + b.n - 2;
  const pooledSd = Math.sqrt(((a.n - 1) * a.sd ** 2 + (b.n - 1) * b.sd ** 2) / pooledDf);
  const effectSize = hedgesCorrection(pooledDf) * (difference / pooledSd);
  const effectStandardError = Math.sqrt(1 / a.n + 1 / b.n + effectSize ** 2 / (2 * (a.n + b.n)));
  const effectReach = criticalValue(confidence) * effectStandardError;

  return {
    difference,
    standardError,
    low: difference - reach,
    high: difference + reach,
    t,
    df,
    p: twoSidedP(t, df),
    effectSize,
    effectStandardError,
    effectLow: effectSize - effectReach,
    effectHigh: effectSize + effectReach,
  };
}

function requireGroup(letter: "A" | "B", { mean, sd, n }: GroupSummary): void {
  requireNumber(`mean${letter}`, mean);
  requirePositive(`sd${letter}`, sd);
  requireGroupSize(`n${letter}`, n);
}
