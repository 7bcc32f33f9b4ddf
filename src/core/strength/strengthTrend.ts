import { expectAtLeast, expectPositive } from "../checks";
import { last } from "../last";
import { requireProbability } from "../statistics/inference";
import {
  mixtureAbove,
  mixtureInterval,
  mixtureMean,
  type NormalMixture,
} from "../statistics/normalMixture";
import { driftSd, trendModel, type Drift } from "./trend/trendModel";
import {
  requireDays,
  usedSets,
  type LoggedSet,
  type TrendOptions,
  type UsedSets,
} from "./trend/usedSets";
import { contrastOf, wanderings, type Contrast, type Wandering } from "./trend/wanderings";

/** Where a lifter stands today, and how far they have come. */
export interface TrendSummary {
  /** The one-repetition maximum on the last day that counts, with its interval. */
  readonly today: number;
  readonly low: number;
  readonly high: number;
  /** Fraction gained since the first day, with its interval. */
  readonly rise: number;
  readonly riseLow: number;
  readonly riseHigh: number;
  /** The probability that the maximum is above that of the first day. */
  readonly chanceOfRise: number;
  readonly days: number;
  readonly sets: number;
}

/** The one-repetition maximum on one day of the log, seen from the whole log. */
export interface TrendDay {
  readonly date: number;
  readonly oneRepMax: number;
  readonly low: number;
  readonly high: number;
}

/** Today's maximum with its interval, and the days behind it. */
export interface StrengthTrend extends TrendSummary {
  readonly table: readonly TrendDay[];
}

const USUAL_CONFIDENCE = 0.95;

/**
 * The one-repetition maximum over time from every logged set, however far from failure.
 *
 * What the log cannot know is carried along instead of being taken for known: how the lifter's own curve lies beside
 * the equation, the bias that all their calls share, the error of each call, each day's form, and how far strength
 * wanders between days (`trendModel`, `wanderings`). So the interval holds though none of them are known, and a rise
 * that only comes from doing fewer reps is not taken for strength.
 *
 * Source: a level that drifts and wanders, seen through the Kalman filter and smoother (Harvey 1989, Forecasting,
 * Structural Time Series Models and the Kalman Filter), averaged over the sizes of the two wanderings. The choice of
 * priors and of what counts was made on simulated logs with known truth: docs/accuracy.md.
 *
 * @param sets - The log of one lift of one lifter, in any order.
 * @param options - What can be said besides; see its type.
 * @returns Today's maximum and its rise with intervals, and a row a day.
 * @throws BadInput where a set cannot be. NoAnswer where fewer than 3 days have a set that serves.
 */
export function strengthTrend(sets: readonly LoggedSet[], options: TrendOptions): StrengthTrend {
  const used = usedSets(sets, options);
  requireDays(used);
  const ways = waysOf(used, [wholeDrift(used.days)], options);
  return { ...summaryOf(ways, used, options), table: tableOf(ways, used, options) };
}

/** As `strengthTrend`, without the table of days, for a whole squad. */
export function trendSummary(used: UsedSets, options: TrendOptions): TrendSummary {
  requireDays(used);
  return summaryOf(waysOf(used, [wholeDrift(used.days)], options), used, options);
}

/** The ways in which the lifter's ln 1RM may have run, after a look at the options. */
export function waysOf(used: UsedSets, drifts: readonly Drift[], options: TrendOptions) {
  const { reserveSd = 1, curveSd = options.equation.curveSd } = options;
  expectPositive("the standard deviation of reserve", reserveSd);
  expectAtLeast("the standard deviation of the curve", curveSd, 0);
  requireProbability("confidence", options.confidence ?? USUAL_CONFIDENCE);
  return wanderings(trendModel(used, drifts, options));
}

/** A contrast of ln 1RM: the middle and the two ends of its interval. */
export interface Estimate {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  /** The chance that it is above 0. */
  readonly chance: number;
}

/** What the ways a level may have run say of a contrast of days. */
export function estimate(
  ways: readonly Wandering[],
  contrast: Contrast,
  { confidence = USUAL_CONFIDENCE }: TrendOptions,
): Estimate {
  const mixture: NormalMixture = contrastOf(ways, contrast);
  return {
    mean: mixtureMean(mixture),
    ...mixtureInterval(mixture, confidence),
    chance: mixtureAbove(mixture, 0),
  };
}

/** One drift from the first day to the last. */
function wholeDrift(days: readonly number[]): Drift {
  const [first = 0] = days;
  const elapsed = days.map((day) => day - first);
  return { elapsed, sd: driftSd(last(elapsed)) };
}

function summaryOf(
  ways: readonly Wandering[],
  { days, sets }: UsedSets,
  options: TrendOptions,
): TrendSummary {
  const last = days.length - 1;
  const today = estimate(ways, [{ day: last, times: 1 }], options);
  const sinceFirst = [
    { day: last, times: 1 },
    { day: 0, times: -1 },
  ];
  const rise = estimate(ways, sinceFirst, options);
  return {
    today: Math.exp(today.mean),
    low: Math.exp(today.low),
    high: Math.exp(today.high),
    rise: Math.expm1(rise.mean),
    riseLow: Math.expm1(rise.low),
    riseHigh: Math.expm1(rise.high),
    chanceOfRise: rise.chance,
    days: days.length,
    sets: sets.length,
  };
}

function tableOf(
  ways: readonly Wandering[],
  { days }: UsedSets,
  options: TrendOptions,
): TrendDay[] {
  return days.map((date, day) => {
    const { mean, low, high } = estimate(ways, [{ day, times: 1 }], options);
    return { date, oneRepMax: Math.exp(mean), low: Math.exp(low), high: Math.exp(high) };
  });
}
