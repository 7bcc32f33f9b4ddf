import { difference as differenceOf } from "../statistics/compare";
import { criticalValue, requireProbability } from "../statistics/distributions";
import { morrisEffect } from "../testing/morrisEffect";
import { requireCorrelation, requireGroupSize, requireNumber, requirePositive } from "./inputs";

/** One group's line of a before-and-after table. */
export interface ChangeSummary {
  readonly before: number;
  readonly after: number;
  readonly sdBefore: number;
  readonly n: number;
}

/** What a before-and-after table says of two groups. */
export interface StudyChangeDifference {
  /** How much more A changed than B, in the paper's units. */
  readonly difference: number;
  readonly effectSize: number;
  readonly effectStandardError: number;
  readonly effectLow: number;
  readonly effectHigh: number;
}

/**
 * How much more group A changed than group B, from a paper's before-and-after table, and that as an effect
 * size over the pooled SD before (Morris 2008, Organ Res Methods 11:364-386). Papers seldom print the
 * `correlation` of before and after; it touches the standard error only, so try several.
 *
 * @param a - Group A, in the test's unit.
 * @param b - Group B, in the test's unit.
 * @param correlation - Of before and after, from −1 to 1.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns The difference of changes and the effect size.
 * @throws BadInput where a value of the table cannot be.
 */
export function studyChangeDifference(
  a: ChangeSummary,
  b: ChangeSummary,
  correlation: number,
  confidence = 0.95,
): StudyChangeDifference {
  requireGroup("A", a);
  requireGroup("B", b);
  requireCorrelation(correlation);
  requireProbability("confidence", confidence);

  const difference = differenceOf(differenceOf(a.after, a.before), differenceOf(b.after, b.before));
  const squares = (a.n - 1) * a.sdBefore ** 2 + (b.n - 1) * b.sdBefore ** 2;
  const { effectSize, effectStandardError } = morrisEffect({
    difference,
    pooledSdBefore: Math.sqrt(squares / (a.n + b.n - 2)),
    nA: a.n,
    nB: b.n,
    correlation,
  });
  const reach = criticalValue(confidence) * effectStandardError;
  return {
    difference,
    effectSize,
    effectStandardError,
    effectLow: effectSize - reach,
    effectHigh: effectSize + reach,
  };
}

function requireGroup(letter: "A" | "B", { before, after, sdBefore, n }: ChangeSummary): void {
  requireNumber(`before${letter}`, before);
  requireNumber(`after${letter}`, after);
  requirePositive(`sdBefore${letter}`, sdBefore);
  requireGroupSize(`n${letter}`, n);
}
