import { type Absent, BadInput, NoAnswer } from "../problem";
import { difference } from "../statistics/compare";
import { hedgesCorrection } from "../statistics/distributions";
import { meanTest } from "../statistics/meanTest";
import { correlation, mean, standardDeviation } from "../statistics/moments";
import { zip } from "../zip";

/** What came of a group tested twice. */
export interface PairedChange {
  readonly n: number;
  readonly meanBefore: number;
  readonly meanAfter: number;
  readonly meanChange: number;
  readonly sdOfChange: number | Absent;
  readonly standardError: number | Absent;
  readonly low: number | Absent;
  readonly high: number | Absent;
  readonly t: number | Absent;
  readonly df: number | Absent;
  readonly p: number | Absent;
  readonly effectSize: number | Absent;
  readonly effectStandardError: number | Absent;
}

/** Each athlete's change, after − before, in the order given. */
export function changesOf(before: readonly number[], after: readonly number[]): number[] {
  if (before.length !== after.length) {
    throw new BadInput(
      `before has ${before.length} scores and after has ${after.length}; expected as many in both`,
    );
  }
  if (before.length === 0) throw new NoAnswer("no athlete has a score both before and after");
  return zip(after, before).map(([score, earlier]) => difference(score, earlier));
}

/**
 * Did a group change? Mean change with its interval and paired t test, and its size in units of the spread
 * before, corrected for small samples.
 *
 * Source: Student 1908, Biometrika 6:1-25; effect size: Becker 1988, Br J Math Stat Psychol 41:257-278.
 *
 * @param before - Scores before, an athlete each, in the test's unit.
 * @param after - Scores after, of the same athletes in the same order.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns The change with its interval, test and effect size.
 * @throws BadInput where the two are not equally long. NoAnswer where they are empty.
 */
export function pairedChange(
  before: readonly number[],
  after: readonly number[],
  confidence: number,
): PairedChange {
  const { n, mean: meanChange, sd, ...test } = meanTest(changesOf(before, after), confidence);
  return {
    n,
    meanBefore: mean(before),
    meanAfter: mean(after),
    meanChange,
    sdOfChange: sd,
    ...test,
    ...beckerEffect(before, after, meanChange),
  };
}

function beckerEffect(
  before: readonly number[],
  after: readonly number[],
  meanChange: number,
): Pick<PairedChange, "effectSize" | "effectStandardError"> {
  const n = before.length;
  if (n < 3) return noEffect("an effect size needs at least 3 athletes");
  const sdBefore = standardDeviation(before);
  if (sdBefore === 0) return noEffect("all scores before are the same, so there is no spread");
  const effectSize = (hedgesCorrection(n - 1) * meanChange) / sdBefore;
  if (standardDeviation(after) === 0) {
    const absent = "all scores after are the same, so before and after have no correlation";
    return { effectSize, effectStandardError: { absent } };
  }
  const r = correlation(before, after);
  const error = Math.sqrt((2 * (1 - r)) / n + effectSize ** 2 / (2 * n));
  return {
    effectSize,
    effectStandardError: error > 0 ? error : { absent: "before and after are the same" },
  };
}

function noEffect(absent: string): Pick<PairedChange, "effectSize" | "effectStandardError"> {
  return { effectSize: { absent }, effectStandardError: { absent } };
}
