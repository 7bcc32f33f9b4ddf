import { deviations, mean, sumOfProducts, sumOfSquares } from "../statistics/moments";
import { zip } from "../zip";

/** One test of an athlete. */
export interface DatedScore {
  readonly date: number;
  readonly score: number;
}

/** The straight line through one athlete's tests, time counted in units of `per` days. */
export interface OwnLine {
  readonly tests: number;
  readonly slope: number;
  /** The sum of squared deviations of the dates: what the slope's variance is divided by. */
  readonly spread: number;
  /** The sum of squared residuals. */
  readonly residual: number;
  /** From the first test day to the last. */
  readonly span: number;
  readonly meanScore: number;
  /** From the mean date to one unit of time after the last test. */
  readonly ahead: number;
}

/** The least-squares line through tests of one athlete on two different dates or more. */
export function ownLine(tests: readonly DatedScore[], per: number): OwnLine {
  const dates = tests.map(({ date }) => date / per);
  const scores = tests.map(({ score }) => score);
  const spread = sumOfSquares(dates);
  const slope = sumOfProducts(dates, scores) / spread;
  const points = zip(deviations(dates), deviations(scores));
  const residuals = points.map(([x, y]) => y - slope * x);
  const first = dates.reduce((one, other) => Math.min(one, other));
  const last = dates.reduce((one, other) => Math.max(one, other));
  return {
    tests: tests.length,
    slope,
    spread,
    residual: residuals.reduce((sum, r) => sum + r * r, 0),
    span: last - first,
    meanScore: mean(scores),
    ahead: last + 1 - mean(dates),
  };
}
