import { type Absent, NoAnswer } from "../problem";
import { below } from "../statistics/compare";
import { requireProbability } from "../statistics/distributions";
import { type MeanTest, meanTest } from "../statistics/meanTest";
import { correlationFrom, sumOfProducts, sumOfSquares } from "../statistics/moments";
import { welchTest } from "../statistics/welch";
import { type BeforeAfter, adjustedDifference } from "./adjustedDifference";
import { type ExtraSpread, extraSpread } from "./extraSpread";
import { type MorrisEffect, morrisEffect } from "./morrisEffect";
import { changesOf } from "./pairedChange";

/** A group by its name, complete pairs only. */
export interface TrainingGroup extends BeforeAfter {
  readonly name: string;
}

/** What came of two groups tested twice. */
export interface GroupChange {
  readonly groupA: string;
  readonly nA: number;
  readonly changeA: number;
  readonly lowA: number | Absent;
  readonly highA: number | Absent;
  readonly pA: number | Absent;
  readonly groupB: string;
  readonly nB: number;
  readonly changeB: number;
  readonly lowB: number | Absent;
  readonly highB: number | Absent;
  readonly pB: number | Absent;
  /** Change of A less change of B, and its test (Welch on the changes). */
  readonly difference: number;
  readonly standardError: number | Absent;
  readonly low: number | Absent;
  readonly high: number | Absent;
  readonly t: number | Absent;
  readonly df: number | Absent;
  readonly p: number | Absent;
  /** A less B from the same starting score, and its test. */
  readonly adjustedDifference: number | Absent;
  readonly adjustedStandardError: number | Absent;
  readonly adjustedLow: number | Absent;
  readonly adjustedHigh: number | Absent;
  readonly adjustedDf: number | Absent;
  readonly adjustedP: number | Absent;
  readonly effectSize: number | Absent;
  readonly effectStandardError: number | Absent;
  /** How much more the changes of A spread than those of B, who share the same test error; its interval and p. */
  readonly extraSpread: number | Absent;
  readonly extraSpreadLow: number | Absent;
  readonly extraSpreadHigh: number | Absent;
  readonly extraSpreadP: number | Absent;
  readonly reading: string;
}

/**
 * Did one group change more than the other? Each group's own change is listed, but what decides is the
 * difference between the groups: two separate tests, one with a small p and one without, say nothing about
 * it (Gelman and Stern 2006, Am Stat 60:328-331).
 *
 * Source: Welch 1947, Biometrika 34:28-35; Vickers and Altman 2001, BMJ 323:1123-1124; Morris 2008, Organ Res Methods
 * 11:364-386.
 *
 * @param a - Group A, in the test's unit.
 * @param b - Group B, in the test's unit.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns Each group's change, and the difference that decides.
 * @throws NoAnswer where a group has nobody with both scores.
 */
export function groupChange(a: TrainingGroup, b: TrainingGroup, confidence: number): GroupChange {
  requireProbability("confidence", confidence);
  const changesA = changesOfGroup(a);
  const changesB = changesOfGroup(b);
  const changeA = meanTest(changesA, confidence);
  const changeB = meanTest(changesB, confidence);
  const plain = welchTest(changesA, changesB, confidence);
  const adjusted = adjustedDifference(a, b, confidence);
  const extra = extraSpreadOf(changeA, changeB, confidence);
  return {
    groupA: a.name,
    nA: changeA.n,
    changeA: changeA.mean,
    lowA: changeA.low,
    highA: changeA.high,
    pA: changeA.p,
    groupB: b.name,
    nB: changeB.n,
    changeB: changeB.mean,
    lowB: changeB.low,
    highB: changeB.high,
    pB: changeB.p,
    ...plain,
    adjustedDifference: adjusted.difference,
    adjustedStandardError: adjusted.standardError,
    adjustedLow: adjusted.low,
    adjustedHigh: adjusted.high,
    adjustedDf: adjusted.df,
    adjustedP: adjusted.p,
    ...effect(a, b, plain.difference),
    extraSpread: extra.sd,
    extraSpreadLow: extra.low,
    extraSpreadHigh: extra.high,
    extraSpreadP: extra.p,
    reading: reading(a.name, b.name, adjusted.difference, adjusted.p, 1 - confidence),
  };
}

function changesOfGroup({ name, before, after }: TrainingGroup): number[] {
  if (before.length === 0 && after.length === 0) {
    throw new NoAnswer(`no athlete of ${name} has a score both before and after`);
  }
  return changesOf(before, after);
}

/** Morris's effect, with the SD before and the correlation pooled within the groups. */
function effect(
  a: BeforeAfter,
  b: BeforeAfter,
  difference: number,
): Record<keyof MorrisEffect, number | Absent> {
  const [nA, nB] = [a.before.length, b.before.length];
  const before = sumOfSquares(a.before) + sumOfSquares(b.before);
  const after = sumOfSquares(a.after) + sumOfSquares(b.after);
  const absent = (reason: string) => ({ absent: reason });
  if (nA + nB < 5) {
    const few = absent("an effect size of two groups needs at least 5 athletes");
    return { effectSize: few, effectStandardError: few };
  }
  if (before === 0) {
    const none = absent("the scores before do not vary, so there is no spread to measure by");
    return { effectSize: none, effectStandardError: none };
  }
  const products = sumOfProducts(a.before, a.after) + sumOfProducts(b.before, b.after);
  const correlation = after === 0 ? 0 : correlationFrom(products, before, after);
  const pooledSdBefore = Math.sqrt(before / (nA + nB - 2));
  const { effectSize, effectStandardError } = morrisEffect({
    difference,
    pooledSdBefore,
    nA,
    nB,
    correlation,
  });
  if (after === 0) {
    const reason = "the scores after do not vary, so before and after have no correlation";
    return { effectSize, effectStandardError: absent(reason) };
  }
  return {
    effectSize,
    effectStandardError:
      effectStandardError > 0 ? effectStandardError : absent("every athlete changed alike"),
  };
}

/** The spread of A's changes beyond that of B's; one athlete has no spread. */
function extraSpreadOf(a: MeanTest, b: MeanTest, confidence: number): ExtraSpread {
  if (typeof a.sd !== "number") return noExtraSpread(a.sd);
  if (typeof b.sd !== "number") return noExtraSpread(b.sd);
  return extraSpread({ sd: a.sd, df: a.n - 1 }, { sd: b.sd, df: b.n - 1 }, confidence);
}

const noExtraSpread = (absent: Absent): ExtraSpread => ({
  sd: absent,
  low: absent,
  high: absent,
  p: absent,
});

/** One sentence on the adjusted difference alone. "Not shown" is never "the same". */
function reading(
  nameA: string,
  nameB: string,
  difference: number | Absent,
  p: number | Absent,
  alpha: number,
): string {
  if (typeof difference !== "number" || typeof p !== "number") {
    return `not enough to go by to compare ${nameA} and ${nameB}`;
  }
  if (!below(p, alpha)) {
    return `no difference between ${nameA} and ${nameB} shown, which does not show they are the same`;
  }
  const side = difference > 0 ? "higher" : "lower";
  return `from the same starting score, ${nameA} ended ${side} than ${nameB}`;
}
