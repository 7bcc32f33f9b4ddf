import type { Observation, SlopePrior } from "../../../src/core/statistics/levelRegression";
import type { Equation } from "../../../src/core/strength/equations";
import type { LoggedSet } from "../../../src/core/strength/trend/usedSets";
import { cellAt, elementAt } from "../../present";
import { denseFit } from "../statistics/denseNormal";
import jstat from "jstat";

/** The trend's settings, every one of them given. */
export interface Settings {
  readonly equation: Equation;
  readonly reserveBias: number;
  readonly reserveSd: number;
  readonly maxReps: number;
  readonly confidence: number;
  readonly curveSd: number;
}

/** A drift of ln 1RM: days gone by as a function of the day. */
type Drifts = (days: readonly number[]) => { elapsed: (day: number) => number; sd: number }[];

export const oneDrift: Drifts = (days) => {
  const [first, last] = [Math.min(...days), Math.max(...days)];
  return [{ elapsed: (day) => day - first, sd: Math.min(0.001, 0.06 / (last - first)) }];
};

export const driftsAround =
  (change: number): Drifts =>
  (days) => {
    const turn = Math.max(...days.filter((day) => day < change));
    const first = Math.min(...days);
    const [before, after] = [turn - first, Math.max(...days) - turn];
    return [
      { elapsed: (day) => Math.min(day, turn) - first, sd: Math.min(0.001, 0.06 / before) },
      { elapsed: (day) => Math.max(0, day - turn), sd: Math.min(0.001, 0.06 / after) },
    ];
  };

/**
 * The trend computed another way: sets compared each with each, the equation inverted by bisection, one full
 * covariance matrix for every pair of wanderings, quantiles by bisection on jStat's normal distribution.
 */
export function denseTrend(log: readonly LoggedSet[], settings: Settings, drifts = oneDrift) {
  const { equation, reserveBias, reserveSd, maxReps, confidence, curveSd } = settings;
  const sameDay = (a: LoggedSet, b: LoggedSet) => Math.floor(a.date) === Math.floor(b.date);
  const beats = (a: LoggedSet, b: LoggedSet) =>
    a.load >= b.load && a.reps >= b.reps && (a.load > b.load || a.reps > b.reps);
  const sets = log
    .filter((set) => set.reserve > 0 || !log.some((one) => sameDay(one, set) && beats(one, set)))
    .filter((set) => set.reps <= maxReps)
    .filter((set) => set.reps + set.reserve + reserveBias <= equation.cap);
  const days = [...new Set(sets.map((set) => Math.floor(set.date)))].sort((a, b) => a - b);
  const given = drifts(days);

  const h = (t: number) => -equation.slope(t) / equation.fraction(t);
  const repsAt = (fraction: number) => {
    if (fraction >= 1) return 1;
    let [low, high] = [1, equation.cap];
    if (fraction <= equation.fraction(high)) return high;
    for (let i = 0; i < 200; i++) {
      const middle = (low + high) / 2;
      if (equation.fraction(middle) > fraction) low = middle;
      else high = middle;
    }
    return low;
  };

  const slopes: SlopePrior[] = [
    ...given.map(({ sd }) => ({ sd, inLevel: true })),
    { sd: reserveSd / 2, inLevel: false },
    { sd: curveSd, inLevel: false },
  ];
  const linear = (set: LoggedSet, estimated: number, curve: number): Observation => {
    const day = Math.floor(set.date);
    const place = days.indexOf(day);
    const lean = given.map(({ elapsed }) => elapsed(day));
    if (set.reps === 1 && set.reserve === 0) {
      const variance = ((h(1) * reserveSd) / 3) ** 2;
      return { place, value: Math.log(set.load), columns: [...lean, 0, 0], variance };
    }
    const called = Math.max(1, set.reps + set.reserve + reserveBias);
    const t = 1 + (estimated - 1) * Math.exp(-curve);
    const g = h(t) * Math.exp(-curve);
    const value =
      Math.log(set.load) -
      Math.log(equation.fraction(t)) +
      g * (called - estimated) +
      h(t) * (t - 1) * curve;
    return {
      place,
      value,
      columns: [...lean, -g, h(t) * (t - 1)],
      variance: (g * reserveSd) ** 2,
    };
  };

  const first = sets.map((set) => {
    const { value, columns, variance } = linear(
      set,
      Math.max(1, set.reps + set.reserve + reserveBias),
      0,
    );
    const bias = elementAt(columns, given.length);
    const curve = elementAt(columns, given.length + 1);
    const weight = 1 / (variance + (curveSd * curve) ** 2 + ((reserveSd / 2) * bias) ** 2);
    return { value, weight };
  });
  const total = first.reduce((sum, { weight }) => sum + weight, 0);
  const start = first.reduce((sum, { value, weight }) => sum + (weight * value) / total, 0);

  let [levels, curve] = [days.map(() => start), 0];
  const observations = () =>
    sets.map((set) => {
      const level = elementAt(levels, days.indexOf(Math.floor(set.date)));
      const t = repsAt(set.load / Math.exp(level));
      return linear(set, 1 + (t - 1) * Math.exp(curve), curve);
    });
  for (let round = 0; round < 3; round++) {
    const fit = denseFit(
      { times: days, observations: observations(), slopes },
      { walk: 0.003 ** 2, noise: 0.02 ** 2 },
    );
    levels = fit.levels;
    const found = elementAt(fit.slopes, slopes.length - 1);
    curve = Math.min(2 * curveSd, Math.max(-2 * curveSd, found));
  }

  const model = { times: days, observations: observations(), slopes };
  const components: (ReturnType<typeof denseFit> & { logWeight: number })[] = [];
  for (let i = 1; i <= 12; i++) {
    for (let j = 1; j <= 10; j++) {
      const [u, y] = [(i - 0.5) / 12, (j - 0.5) / 10];
      const [w, s] = [0.02 * u * u, 0.08 * y * y];
      const fit = denseFit(model, { walk: w * w, noise: s * s });
      const logWeight =
        fit.logLikelihood + Math.log(u) + Math.log(y) - (w / 0.005) ** 2 / 2 - (s / 0.03) ** 2 / 2;
      components.push({ ...fit, logWeight });
    }
  }
  const highest = Math.max(...components.map(({ logWeight }) => logWeight));
  const shareOf = ({ logWeight }: { logWeight: number }) => Math.exp(logWeight - highest);
  const sum = components.reduce((all, component) => all + shareOf(component), 0);

  /** What is known of a sum of levels, each taken so many times. */
  const contrast = (times: Readonly<Record<number, number>>) => {
    const entries = Object.entries(times).map(([day, count]) => ({ day: Number(day), count }));
    const pairs = entries.flatMap((a) => entries.map((b) => [a, b] as const));
    const parts = components.map((component) => ({
      share: shareOf(component) / sum,
      mean: entries.reduce(
        (all, { day, count }) => all + count * elementAt(component.levels, day),
        0,
      ),
      sd: Math.sqrt(
        pairs.reduce(
          (all, [a, b]) => all + a.count * b.count * cellAt(component.covariance, a.day, b.day),
          0,
        ),
      ),
    }));
    const below = (x: number) =>
      parts.reduce(
        (all, { share, mean, sd }) => all + share * jstat.jStat.normal.cdf(x, mean, sd),
        0,
      );
    const quantile = (p: number) => {
      let [low, high] = [-20, 20];
      for (let i = 0; i < 80; i++) {
        const middle = (low + high) / 2;
        if (below(middle) < p) low = middle;
        else high = middle;
      }
      return low;
    };
    return {
      mean: parts.reduce((all, { share, mean }) => all + share * mean, 0),
      low: quantile((1 - confidence) / 2),
      high: quantile((1 + confidence) / 2),
      chance: 1 - below(0),
    };
  };
  return { days, sets: sets.length, contrast };
}
