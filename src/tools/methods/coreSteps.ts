/** What worked examples show of the inside of the longer calculations: what the core itself goes by. */
import { integratedEffects } from "../../core/statistics/integratedEffects";
import { equations } from "../../core/strength/equations";
import { waysOf } from "../../core/strength/strengthTrend";
import { driftSd, trendModel, type Drift } from "../../core/strength/trend/trendModel";
import { usedSets, type UsedSets } from "../../core/strength/trend/usedSets";
import { contrastOf } from "../../core/strength/trend/wanderings";
import { numbersOf, type Grid, type Value } from "./values";

type Steps = (...values: Value[]) => Grid;

export const coreSteps: Readonly<Record<string, Steps>> = {
  /**
   * A log of one set a day as the trend's linear model sees it: a row a day of z, the lean on the bias of the calls,
   * the lean on the curve, and the variance of the call's error.
   */
  trendLines: (...log) => {
    const used = logOf(log);
    const model = trendModel(used, [driftOver(used.days)], OPTIONS);
    const rows = used.days.map((_, day) => {
      const [z = 0, , bias = 0, curve = 0] = model.series.map((series) => series[day]!);
      return [z, bias, curve, model.variances[day]!];
    });
    return { rows };
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
    const at = numbersOf(change ?? 1)[0]! - 1;
    const [first, turn, end] = [used.days[0]!, used.days[at]!, used.days.at(-1)!];
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
      sigma: numbersOf(sigma)[0]!,
      df: df === null ? undefined : numbersOf(df)[0]!,
      scale: numbersOf(scale)[0]!,
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
  const loads = numbersOf(load);
  const [dates, allReps, reserves] = [date, reps, reserve].map(numbersOf) as [
    number[],
    number[],
    number[],
  ];
  const sets = loads.map((one, i) => ({
    date: dates[i]!,
    load: one,
    reps: allReps[i]!,
    reserve: reserves[i]!,
  }));
  return usedSets(sets, OPTIONS);
}

function driftOver(days: readonly number[]): Drift {
  const elapsed = days.map((day) => day - days[0]!);
  return { elapsed, sd: driftSd(elapsed.at(-1)!) };
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
  const before = 7 / (days[at]! - days[0]!);
  const after = 7 / (days[end]! - days[at]!);
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
