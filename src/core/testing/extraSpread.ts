import type { Absent } from "../problem";
import { above } from "../statistics/compare";
import {
  chiSquareQuantile,
  chiSquareUpperTail,
  fUpperTail,
  requireProbability,
} from "../statistics/distributions";

/** A standard deviation, and the degrees of freedom it was estimated on; none where it is known exactly. */
export interface EstimatedSd {
  readonly sd: number;
  readonly df?: number | undefined;
}

/** A spread beyond another, as a standard deviation. */
export interface ExtraSpread {
  readonly sd: number | Absent;
  /** The interval's ends, 0 where the two spreads may be alike. */
  readonly low: number | Absent;
  readonly high: number | Absent;
  /** How likely so much more spread is by chance alone; one-sided. */
  readonly p: number | Absent;
}

const NO_MORE = { absent: "the changes spread no more than the spread they are compared with" };
const NO_SPREAD = { absent: "a spread of 0 leaves nothing to compare by" };

/**
 * How much more do changes spread than they would anyway: the SD that is left of `seen` once `expected`, the
 * spread of a control group or of test error, is taken out. The interval joins those of the two variances
 * (the method of variance estimates recovery), the p is that of their ratio.
 *
 * Source: Zou and Donner 2008, Stat Med 27:1693-1702; Atkinson and Batterham 2015, Exp Physiol 100:577-588.
 *
 * @param seen - The SD of changes that was seen.
 * @param expected - The SD that there would be anyway.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns The SD that is left, with its interval and p.
 * @throws BadInput where `confidence` is not between 0 and 1.
 */
export function extraSpread(
  seen: EstimatedSd & { readonly df: number },
  expected: EstimatedSd,
  confidence: number,
): ExtraSpread {
  requireProbability("confidence", confidence);
  const unit = Math.max(seen.sd, expected.sd);
  const [ofSeen, ofExpected] = [seen.sd / unit, expected.sd / unit];
  const excess = (ofSeen - ofExpected) * (ofSeen + ofExpected);
  const sd = above(seen.sd, expected.sd) ? unit * Math.sqrt(excess) : NO_MORE;
  if (seen.sd === 0 || expected.sd === 0) {
    return { sd, low: NO_SPREAD, high: NO_SPREAD, p: NO_SPREAD };
  }
  const a = varianceInterval({ sd: ofSeen, df: seen.df }, confidence);
  const b = varianceInterval({ sd: ofExpected, df: expected.df }, confidence);
  const root = (square: number): number => unit * Math.sqrt(Math.max(0, square));
  return {
    sd,
    low: root(excess - Math.hypot(a.below, b.above)),
    high: root(excess + Math.hypot(a.above, b.below)),
    p: chanceOfRatio((ofSeen / ofExpected) ** 2, seen.df, expected.df),
  };
}

/** How far the chi-square interval of a variance reaches below and above it; nowhere where it is known. */
function varianceInterval({ sd, df }: EstimatedSd, confidence: number) {
  if (df === undefined) return { below: 0, above: 0 };
  const variance = sd ** 2;
  const bound = (p: number): number => (df * variance) / chiSquareQuantile(p, df);
  return {
    below: variance - bound((1 + confidence) / 2),
    above: bound((1 - confidence) / 2) - variance,
  };
}

/** The chance of a ratio of variances at least this large where the true ones are the same. */
function chanceOfRatio(ratio: number, df: number, expectedDf: number | undefined): number {
  return expectedDf === undefined
    ? chiSquareUpperTail(df * ratio, df)
    : fUpperTail(ratio, df, expectedDf);
}
