import { NoAnswer } from "../problem";
import { hedgesCorrection } from "../statistics/distributions";

/** How much more one group changed than the other, and what the effect size needs to know. */
export interface GroupDifference {
  /** The change of group A less the change of group B. */
  readonly difference: number;
  /** The SD of the score before, pooled within the groups. */
  readonly pooledSdBefore: number;
  readonly nA: number;
  readonly nB: number;
  /** The correlation of before and after within the groups. */
  readonly correlation: number;
}

export interface MorrisEffect {
  readonly effectSize: number;
  readonly effectStandardError: number;
}

/**
 * The effect size of a trial with a test before and after in two groups: how much more A changed than B, in
 * units of the spread before, which training has not touched yet, and corrected for small samples.
 *
 * Source: Morris 2008, Organ Res Methods 11:364-386, equations 8 to 10 and 25 (the estimate standing in for
 * the unknown true effect, J exact).
 */
export function morrisEffect(trial: GroupDifference): MorrisEffect {
  const { difference, pooledSdBefore, nA, nB, correlation } = trial;
  const df = nA + nB - 2;
  if (df <= 2) {
    throw new NoAnswer(
      `an effect size of two groups needs at least 5 athletes; there are ${nA + nB}`,
    );
  }
  const j = hedgesCorrection(df);
  const effectSize = (j * difference) / pooledSdBefore;
  const noise = 2 * (1 - correlation) * (1 / nA + 1 / nB);
  const variance = j ** 2 * (df / (df - 2)) * (noise + effectSize ** 2) - effectSize ** 2;
  return { effectSize, effectStandardError: Math.sqrt(Math.max(0, variance)) };
}
