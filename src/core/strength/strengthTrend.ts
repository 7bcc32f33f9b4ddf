import { expectAtLeast, expectPositive, inRow } from "../checks";
import { last } from "../last";
import { NoAnswer } from "../problem";
import { atMost } from "../statistics/compare";
import { criticalValue, normalCdf } from "../statistics/distributions";
import { fitLevelVariances } from "../statistics/levelVariances";
import {
  smoothLevels,
  type LevelSeries,
  type LevelVariances,
  type SmoothedLevels,
} from "../statistics/localLevel";
import { checkReach, type Equation } from "./equations";

/** A set of a training log. */
export interface LoggedSet {
  /** The day, as a serial number; a time of day is a fraction and does not count. */
  readonly date: number;
  readonly load: number;
  readonly reps: number;
  readonly reserve: number;
  /** The row of the log it stands on, for messages; its place in the list unless given. */
  readonly row?: number;
}

/** How the lifter judges reserve, and which sets and curve to trust. */
export interface TrendOptions {
  readonly equation: Equation;
  /** Reps the lifter has left beyond what they say, on average; 0 unless given. */
  readonly reserveBias?: number;
  /** Standard deviation of their calls, in reps; 1 unless given. */
  readonly reserveSd?: number;
  /** Sets of more reps to failure than this, as called, are left out; 12 unless given. */
  readonly maxReps?: number;
  /** Of the intervals; 0.95 unless given. */
  readonly confidence?: number;
}

/** The one-repetition maximum on one day of the log, seen from the whole log. */
export interface TrendDay {
  readonly date: number;
  readonly oneRepMax: number;
  readonly low: number;
  readonly high: number;
}

export interface StrengthTrend {
  readonly table: readonly TrendDay[];
  /** The one-repetition maximum on the last logged day, with its interval. */
  readonly today: number;
  readonly low: number;
  readonly high: number;
  /** Fraction gained since the first day. */
  readonly rise: number;
  /** The probability that the maximum is above that of the first day. */
  readonly chanceOfRise: number;
  readonly days: number;
  readonly sets: number;
  /** Variance a day of the wandering of ln 1RM, and of a day's own noise. */
  readonly variances: LevelVariances;
}

const LEAST_DAYS = 3;

/**
 * The one-repetition maximum over time from every logged set, however far from failure.
 *
 * A set of t reps to failure tells ln 1RM = ln load − ln f(t). How well it tells depends on how well the
 * lifter judges reserve, and on how steep the equation is there: a call that is off by one rep moves ln 1RM
 * by f′/f, little for a heavy single and much for a light set. Each set gets the variance that follows
 * (the delta method), the sets of a day are combined by precision, and the days are tied together by the
 * local-level model (Harvey 1989, Forecasting, Structural Time Series Models and the Kalman Filter): a day's
 * value is the level plus the day's own noise, and the level wanders. How far it wanders and how noisy days
 * are, the log itself tells by maximum likelihood; the smoother then sees every day from the whole log
 * (Rauch, Tung and Striebel 1965, AIAA J 3:1445-1450). The intervals take the two variances as known.
 */
export function strengthTrend(sets: readonly LoggedSet[], options: TrendOptions): StrengthTrend {
  const { maxReps = 12, reserveSd = 1, confidence = 0.95 } = options;
  expectPositive("the standard deviation of reserve", reserveSd);
  const places = sets.map((set, i): PlacedSet => ({ ...set, row: set.row ?? i + 1 }));
  const used = places.filter(({ reps, reserve }) => atMost(reps + reserve, maxReps));
  const series = levelsOfDays(used, options);
  const days = series.times.length;
  if (days < LEAST_DAYS) {
    const left = sets.length - used.length;
    const why =
      left > 0 ? ` (sets of more than ${maxReps} reps to failure, left out: ${left})` : "";
    throw new NoAnswer(`a trend takes sets of at least ${LEAST_DAYS} days; found ${days}${why}`);
  }

  const variances = fitLevelVariances(series);
  const smoothed = smoothLevels(series, variances);
  const z = criticalValue(confidence);
  const table = series.times.map((date, i): TrendDay => {
    const level = smoothed.means[i]!;
    const reach = z * Math.sqrt(smoothed.variances[i]!);
    return {
      date,
      oneRepMax: Math.exp(level),
      low: Math.exp(level - reach),
      high: Math.exp(level + reach),
    };
  });
  const today = table[days - 1]!;
  return {
    table,
    today: today.oneRepMax,
    low: today.low,
    high: today.high,
    ...riseSinceFirst(smoothed, variances),
    days,
    sets: used.length,
    variances,
  };
}

type PlacedSet = LoggedSet & { readonly row: number };

/** ln 1RM of each day, from its sets combined by precision, and the variance of that. */
function levelsOfDays(sets: readonly PlacedSet[], options: TrendOptions): LevelSeries {
  const days = new Map<number, { precision: number; weighted: number }>();
  for (const set of sets) {
    const { value, variance } = inRow(`row ${set.row}`, () => logOneRepMax(set, options));
    const date = Math.floor(set.date);
    const day = days.get(date) ?? { precision: 0, weighted: 0 };
    day.precision += 1 / variance;
    day.weighted += value / variance;
    days.set(date, day);
  }
  const inOrder = [...days].sort(([a], [b]) => a - b);
  return {
    times: inOrder.map(([date]) => date),
    values: inOrder.map(([, day]) => day.weighted / day.precision),
    knownVariances: inOrder.map(([, day]) => 1 / day.precision),
  };
}

/** What one set tells of ln 1RM, and the variance that comes from judging its reserve. */
function logOneRepMax(set: LoggedSet, options: TrendOptions) {
  const { equation, reserveBias = 0, reserveSd = 1 } = options;
  expectPositive("load", set.load);
  expectAtLeast("reps", set.reps, 1);
  expectAtLeast("reserve", set.reserve, 0);
  const t = set.reps + set.reserve + reserveBias;
  checkReach(equation, t);
  const fraction = equation.fraction(t);
  return {
    value: Math.log(set.load) - Math.log(fraction),
    variance: ((equation.slope(t) / fraction) * reserveSd) ** 2,
  };
}

/** The change from the first to the last level; where the level does not wander, there is none to judge. */
function riseSinceFirst(smoothed: SmoothedLevels, variances: LevelVariances) {
  const { means, variances: spread, firstLastCovariance } = smoothed;
  const variance = last(spread) + spread[0]! - 2 * firstLastCovariance;
  if (variances.walk === 0 || !(variance > 0)) return { rise: 0, chanceOfRise: 0.5 };
  const rise = last(means) - means[0]!;
  return { rise: Math.expm1(rise), chanceOfRise: normalCdf(rise / Math.sqrt(variance)) };
}
