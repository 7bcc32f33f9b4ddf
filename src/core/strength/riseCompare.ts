import { last } from "../last";
import { NoAnswer } from "../problem";
import { estimate, waysOf } from "./strengthTrend";
import { driftSd } from "./trend/trendModel";
import { LEAST_DAYS, usedSets, type LoggedSet, type TrendOptions } from "./trend/usedSets";

/** How fast a lifter rose in two blocks of training, a week, as fractions. */
export interface RiseComparison {
  readonly before: number;
  readonly beforeLow: number;
  readonly beforeHigh: number;
  readonly after: number;
  readonly afterLow: number;
  readonly afterHigh: number;
  /** The rise after less the rise before. */
  readonly difference: number;
  readonly low: number;
  readonly high: number;
  /** The probability that the rise was faster after the change than before. */
  readonly chanceOfAFasterRise: number;
  readonly daysBefore: number;
  readonly daysAfter: number;
  readonly sets: number;
}

const WEEK = 7;

/**
 * Whether a lifter rose faster after a change of training than before it.
 *
 * The model is that of `strengthTrend`, but with a drift for each block: one drift for both would pull the two rises
 * together, and its interval would miss where a rise is followed by none. The last day before the change ends the
 * first block and starts the second.
 *
 * Source: as for `strengthTrend`.
 *
 * @param changeDate - The first day of the second block, as a sheet counts days.
 * @param sets - The log of one lift of one lifter, in any order.
 * @param options - What can be said besides; see its type.
 * @returns The weekly rise before and after, and their difference.
 * @throws BadInput where a set cannot be. NoAnswer where a block has too few days.
 */
export function riseCompare(
  changeDate: number,
  sets: readonly LoggedSet[],
  options: TrendOptions,
): RiseComparison {
  const used = usedSets(sets, options);
  const { days } = used;
  const earlier = days.filter((day) => day < Math.floor(changeDate));
  const daysBefore = earlier.length;
  const daysAfter = days.length - daysBefore;
  if (daysBefore < LEAST_DAYS || daysAfter < LEAST_DAYS) {
    throw new NoAnswer(
      `comparing two blocks takes sets of at least ${LEAST_DAYS} days before the change and ` +
        `${LEAST_DAYS} from it on; found ${daysBefore} and ${daysAfter}`,
    );
  }

  const [first, change, end] = [0, daysBefore - 1, days.length - 1];
  const [firstDay = 0] = days;
  const changeDay = last(earlier);
  const spanBefore = changeDay - firstDay;
  const spanAfter = last(days) - changeDay;
  const ways = waysOf(
    used,
    [
      {
        elapsed: days.map((day) => Math.min(day, changeDay) - firstDay),
        sd: driftSd(spanBefore),
      },
      { elapsed: days.map((day) => Math.max(0, day - changeDay)), sd: driftSd(spanAfter) },
    ],
    options,
  );
  const weeksBefore = spanBefore / WEEK;
  const weeksAfter = spanAfter / WEEK;
  const before = estimate(
    ways,
    [
      { day: change, times: 1 / weeksBefore },
      { day: first, times: -1 / weeksBefore },
    ],
    options,
  );
  const after = estimate(
    ways,
    [
      { day: end, times: 1 / weeksAfter },
      { day: change, times: -1 / weeksAfter },
    ],
    options,
  );
  const difference = estimate(
    ways,
    [
      { day: end, times: 1 / weeksAfter },
      { day: change, times: -1 / weeksAfter - 1 / weeksBefore },
      { day: first, times: 1 / weeksBefore },
    ],
    options,
  );
  return {
    before: Math.expm1(before.mean),
    beforeLow: Math.expm1(before.low),
    beforeHigh: Math.expm1(before.high),
    after: Math.expm1(after.mean),
    afterLow: Math.expm1(after.low),
    afterHigh: Math.expm1(after.high),
    difference: Math.expm1(difference.mean),
    low: Math.expm1(difference.low),
    high: Math.expm1(difference.high),
    chanceOfAFasterRise: difference.chance,
    daysBefore,
    daysAfter,
    sets: used.sets.length,
  };
}
