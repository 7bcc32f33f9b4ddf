import { testTrend } from "../../../src/core/testing/testTrend";
import type { Draws } from "./draws";
import type { Scenario } from "./scenario";

/** Six athletes on four test days, four weeks apart; the scatter about their lines is 2. */
const ATHLETES = 6;
const DAYS = [0, 4, 8, 12];
const NEXT = 16;
const SCATTER = 2;

/** An athlete's true scores by week: so much a week at first, and less and less where gains slow down. */
function invented(draws: Draws, slows: boolean) {
  const gain = 0.6 + 0.3 * draws.normal();
  const start = draws.normal(100, 10);
  const scoreAt = (week: number) => start + gain * (slows ? week * (1 - week / 32) : week);
  const tests = DAYS.map((week) => ({
    date: 46_000 + 7 * week,
    score: scoreAt(week) + SCATTER * draws.normal(),
  }));
  return { gain, tests, next: scoreAt(NEXT) + SCATTER * draws.normal() };
}

const drawn = (draws: Draws, slows: boolean) => {
  const athletes = draws.times(ATHLETES, () => invented(draws, slows));
  // Four weeks a unit, so that the next test is the next one of the series.
  const trends = testTrend(
    athletes.map(({ tests }) => tests),
    28,
    0.95,
  );
  return athletes.map((athlete, i) => ({ ...athlete, trend: trends[i]! }));
};

const few = { runs: 300, shortRuns: 30 };

const slope: Scenario = {
  function: "TESTTREND",
  event: "low to high holds the true slope",
  truth: "6 athletes on 4 test days, straight lines",
  case: "good",
  promised: "95%",
  band: [0.93, 0.97],
  ...few,
  run: (draws) =>
    drawn(draws, false).map(
      ({ gain, trend }) => Number(trend.low) <= 4 * gain && 4 * gain <= Number(trend.high),
    ),
};

const nextScore = (slows: boolean): Scenario => ({
  function: "TESTTREND",
  event: "next low to next high holds the next score",
  truth: `6 athletes on 4 test days, ${slows ? "gains that slow down" : "straight lines"}`,
  case: slows ? "bad" : "good",
  promised: "95%",
  band: slows ? [0.88, 0.97] : [0.93, 0.97],
  ...few,
  run: (draws) =>
    drawn(draws, slows).map(
      ({ next, trend }) => Number(trend.nextLow) <= next && next <= Number(trend.nextHigh),
    ),
});

export const testDays: readonly Scenario[] = [slope, nextScore(false), nextScore(true)];
