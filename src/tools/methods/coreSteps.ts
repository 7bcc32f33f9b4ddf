/** What worked examples show of the inside of the longer calculations: what the core itself goes by. */
import { last } from "../../core/last";
import { picked } from "../../core/picked";
import { integratedEffects } from "../../core/statistics/integratedEffects";
import { equations } from "../../core/strength/equations";
import { waysOf } from "../../core/strength/strengthTrend";
import { driftSd, trendModel, type Drift } from "../../core/strength/trend/trendModel";
import { usedSets, type UsedSets } from "../../core/strength/trend/usedSets";
import { contrastOf } from "../../core/strength/trend/wanderings";
import { transposed } from "../../core/transposed";
import { numberOf, numbersOf, type Grid, type Value } from "./values";

type Steps = (...values: Value[]) => Grid;

export const coreSteps: Readonly<Record<string, Steps>> = {
  /**
   * A log of one set a day as the trend's linear model sees it: a row a day of z, the lean on the bias of the calls,
   * the lean on the curve, and the variance of the call's error.
   */
  trendLines: (...log) => {
    const used = logOf(log);
    const model = trendModel(used, [driftOver(used.days)], OPTIONS);
    const [z, , bias, curve] = model.series;
    return { rows: transposed([z ?? [], bias ?? [], curve ?? [], model.variances]) };
  },
  /** A row for each likely pair of wanderings: its weight, ln 1RM today with its SD, the rise with its SD. */
  trendWays: (...log) => {
    const used = logOf(log);
    const ways = waysOf(used, [driftOver(used.days)], OPTIONS);
    return sideBySide(ways, used.days.length - 1, [[0, used.days.length - 1]]);
  },
  /** The same with a drift up to the day numbered `change`, from 1, and another after it: the two rises in its place. */
  trendWaysOfTwo: (change, ...log) => {
    const used = logOf(log);
    const at = numberOf(change ?? 1) - 1;
    const [first = NaN, turn = NaN, end = NaN] = picked(used.days, [0, at, used.days.length - 1]);
    const drifts: Drift[] = [
      { elapsed: used.days.map((day) => Math.min(day, turn) - first), sd: driftSd(turn - first) },
      { elapsed: used.days.map((day) => Math.max(0, day - turn)), sd: driftSd(end - turn) },
    ];
    const ways = waysOf(used, drifts, OPTIONS);
    const rows = ways.map(({ weight, levels }) => [
      weight,
      levels.level(0),
      levels.level(at),
      levels.level(used.days.length - 1),
      ...differenceOfRises(levels, at, used.days),
    ]);
    return { rows };
  },
  /**
   * Pairs of spreads that may be behind some values (integratedEffects): a row of weight, sigma, omega, the middle of
   * the true values and its variance.
   */
  spreads: (values = null, variances = null, sigma = null, df = null, scale = null) => {
    const { spreads } = integratedEffects({
      values: numbersOf(values),
      errorVariances: numbersOf(variances),
      sigma: numberOf(sigma),
      df: df === null ? undefined : numberOf(df),
      scale: numberOf(scale),
    });
    return {
      rows: spreads.map((one) => [
        one.weight,
        one.sigma,
        one.omega,
        one.middle,
        one.middleVariance,
      ]),
    };
  },
};

const OPTIONS = { equation: equations.epley };

function logOf([date = null, load = null, reps = null, reserve = null]: Value[]): UsedSets {
  const rows = transposed([date, load, reps, reserve].map(numbersOf)) as Logged[];
  const sets = rows.map(([date, load, reps, reserve]) => ({ date, load, reps, reserve }));
  return usedSets(sets, OPTIONS);
}

type Logged = [date: number, load: number, reps: number, reserve: number];

function driftOver(days: readonly number[]): Drift {
  const [first = NaN] = days;
  return { elapsed: days.map((day) => day - first), sd: driftSd(last(days) - first) };
}

type Ways = ReturnType<typeof waysOf>;

function sideBySide(
  ways: Ways,
  today: number,
  rises: readonly (readonly [number, number])[],
): Grid {
  const level = contrastOf(ways, [{ day: today, times: 1 }]);
  const risen = rises.map(([from, to]) =>
    contrastOf(ways, [
      { day: to, times: 1 },
      { day: from, times: -1 },
    ]),
  );
  return {
    rows: level.map(({ weight, mean, sd }, i) => [
      weight,
      mean,
      sd,
      ...risen.flatMap((rise) => [rise[i]!.mean, rise[i]!.sd]),
    ]),
  };
}

/** The mean and the SD of the weekly rise after a day less that before it. */
function differenceOfRises(levels: Ways[number]["levels"], at: number, days: readonly number[]) {
  const end = days.length - 1;
  const [first = NaN, turn = NaN, today = NaN] = picked(days, [0, at, end]);
  const before = 7 / (turn - first);
  const after = 7 / (today - turn);
  const [{ mean, sd } = { mean: 0, sd: 0 }] = contrastOf(
    [{ weight: 1, levels }],
    [
      { day: end, times: after },
      { day: at, times: -after - before },
      { day: 0, times: before },
    ],
  );
  return [mean, sd];
}
