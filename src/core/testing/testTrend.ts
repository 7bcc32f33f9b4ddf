import { expectPositive } from "../checks";
import { type Absent, NoAnswer } from "../problem";
import { criticalValue } from "../statistics/distributions";
import { integratedEffects } from "../statistics/integratedEffects";
import { mean } from "../statistics/moments";
import { mixtureInterval, mixtureMean } from "../statistics/normalMixture";
import { zip } from "../zip";
import { type DatedScore, type OwnLine, ownLine } from "./ownLine";

/** What came of one athlete's tests. */
export interface TestTrend {
  /** How many tests the athlete took. */
  readonly tests: number;
  /** What the athlete's own line gains in one unit of time, and its interval. */
  readonly slope: number | Absent;
  readonly low: number | Absent;
  readonly high: number | Absent;
  /** The slope drawn towards the squad's, as far as the scatter about the lines explains the distance. */
  readonly shrunkSlope: number | Absent;
  /** The score to expect one unit of time after the last test, and its interval. */
  readonly next: number | Absent;
  readonly nextLow: number | Absent;
  readonly nextHigh: number | Absent;
}

/** Wide enough for any squad, in standard errors of a typical slope. */
const USUAL_SCALE = 4;
/** Scores this near their lines, as a part of the largest, lie on them: the rest is rounding. */
const ON_THE_LINE = 1e-9;
const ONE_DAY = { absent: "a line needs tests on two different days" };
const NO_SCATTER = {
  absent: "the scores do not vary about their lines, so there is nothing to judge by",
};

/**
 * Three and more test days: how fast does each athlete gain, and what will the next test show? Each athlete
 * has a straight line of their own; the scatter about the lines, which the athletes share, is the test's error
 * and all that comes and goes. The slopes are drawn towards the squad's, the more so the fewer tests stand
 * behind them. A straight line it stays: where gains slow down, the next score comes out too high.
 *
 * Each athlete's tests are in any order; several of one day count each. `per` is the unit of time in days.
 *
 * Source: random slopes, Swamy 1970, Econometrica 38:311-323; shrunk values, Henderson 1975, Biometrics
 * 31:423-447; Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., ch. 5.4.
 *
 * @param athletes - The dated scores of each athlete.
 * @param per - Days in the unit of time, above 0: 7 for a week.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns A row an athlete, slopes in the test's unit per that time.
 * @throws NoAnswer where nobody has three tests on two different days.
 */
export function testTrend(
  athletes: readonly (readonly DatedScore[])[],
  per: number,
  confidence: number,
): TestTrend[] {
  expectPositive("per", per);
  const reachOf = (df: number): number => criticalValue(confidence, df);
  const lines = athletes.map((tests) => (onOneDay(tests) ? undefined : ownLine(tests, per)));
  const drawn = lines.filter((line) => line !== undefined);
  const df = drawn.reduce((sum, { tests }) => sum + tests - 2, 0);
  if (df <= 0) {
    throw new NoAnswer("expected three tests, on two different days, of at least one athlete");
  }
  const scatter = Math.sqrt(drawn.reduce((sum, { residual }) => sum + residual, 0) / df);
  const scores = athletes.flat().map(({ score }) => Math.abs(score));
  const largest = scores.reduce((most, score) => Math.max(most, score), 0);
  const trends =
    scatter < ON_THE_LINE * largest
      ? drawn.map(withoutScatter)
      : withScatter(drawn, scatter, df, reachOf(df), confidence);
  const trendOf = new Map(zip(drawn, trends));
  return zip(lines, athletes).map(
    ([line, tests]) => (line && trendOf.get(line)) ?? noTrend(tests.length),
  );
}

function onOneDay(tests: readonly DatedScore[]): boolean {
  const [first] = tests;
  return tests.every(({ date }) => date === first?.date);
}

function withScatter(
  lines: readonly OwnLine[],
  scatter: number,
  df: number,
  reach: number,
  confidence: number,
): TestTrend[] {
  const { effect, spreads } = integratedEffects({
    values: lines.map(({ slope }) => slope),
    errorVariances: lines.map(({ spread }) => 1 / spread),
    sigma: scatter,
    df,
    scale: (USUAL_SCALE * scatter) / mean(lines.map(({ span }) => span)),
  });
  return lines.map(({ tests, slope, spread, meanScore, ahead }, athlete) => {
    const trueSlope = effect(athlete);
    const error = scatter / Math.sqrt(spread);
    const shrunkSlope = mixtureMean(trueSlope);
    const nextScore = zip(trueSlope, spreads).map(([component, { sigma }]) => ({
      weight: component.weight,
      mean: meanScore + component.mean * ahead,
      sd: Math.hypot(component.sd * ahead, sigma * Math.sqrt(1 + 1 / tests)),
    }));
    const interval = mixtureInterval(nextScore, confidence);
    return {
      tests,
      slope,
      low: slope - reach * error,
      high: slope + reach * error,
      shrunkSlope,
      next: meanScore + shrunkSlope * ahead,
      nextLow: interval.low,
      nextHigh: interval.high,
    };
  });
}

/** Every score lies on its athlete's line: slopes and next scores, and nothing to judge them by. */
function withoutScatter({ tests, slope, meanScore, ahead }: OwnLine): TestTrend {
  return {
    tests,
    slope,
    low: NO_SCATTER,
    high: NO_SCATTER,
    shrunkSlope: slope,
    next: meanScore + slope * ahead,
    nextLow: NO_SCATTER,
    nextHigh: NO_SCATTER,
  };
}

const noTrend = (tests: number): TestTrend => ({
  tests,
  slope: ONE_DAY,
  low: ONE_DAY,
  high: ONE_DAY,
  shrunkSlope: ONE_DAY,
  next: ONE_DAY,
  nextLow: ONE_DAY,
  nextHigh: ONE_DAY,
});
