import { expectAtLeast, expectWhole } from "../checks";
import { roundToMultiple } from "../load/round";
import { BadInput } from "../problem";

/** Ten years of weeks: a plan longer than this is a mistake in a cell. */
export const MOST_WEEKS = 520;

/** How close to failure the weeks of a block go. */
export interface Taper {
  readonly weeks: number;
  /** Reserve in week 1. */
  readonly from: number;
  /** Reserve in the last week. */
  readonly to: number;
  /** Reserve goes in steps of this; whole reps unless given, 0 for no rounding. */
  readonly step?: number;
}

/**
 * The reserve of every week: straight from the first week to the last, rounded to the nearest step, a tie
 * up, since a rep more in reserve is the cautious side. A taper of one week is its last week.
 *
 * From 3 to 0.5 over six weeks in whole reps: 3, 3, 2, 2, 1, 1.
 *
 * Source: common practice, no source.
 *
 * @param taper - Weeks, first and last reserve, and the step.
 * @returns Reps in reserve, a week each.
 * @throws BadInput where the taper cannot be.
 */
export function reserveTaper(taper: Taper): number[] {
  checkTaper(taper);
  return Array.from({ length: taper.weeks }, (_, i) => reserveOf(taper, i + 1));
}

/**
 * The reserve of one week of the taper.
 *
 * Source: common practice, no source.
 *
 * @param taper - Weeks, first and last reserve, and the step.
 * @param week - From 1 to the taper's weeks.
 * @returns Reps in reserve.
 * @throws BadInput where the taper cannot be, or has no such week.
 */
export function reserveInWeek(taper: Taper, week: number): number {
  checkTaper(taper);
  const { weeks } = taper;
  if (week > weeks) {
    throw new BadInput(
      `week is ${week}; expected a week of the taper, 1 to ${weeks} ` +
        `(to repeat it block after block, MOD(week - 1, ${weeks}) + 1)`,
    );
  }
  expectWhole("week", week, 1, weeks);
  return reserveOf(taper, week);
}

/** The value in a week on the straight line from week 1 to the last week; of one week, the last value. */
export function onTheWay(from: number, to: number, week: number, weeks: number): number {
  return weeks === 1 ? to : from + ((to - from) * (week - 1)) / (weeks - 1);
}

function reserveOf({ weeks, from, to, step = 1 }: Taper, week: number): number {
  return roundToMultiple(onTheWay(from, to, week, weeks), step, "nearest-tie-up");
}

function checkTaper({ weeks, from, to, step }: Taper): void {
  expectWhole("weeks", weeks, 1, MOST_WEEKS);
  expectAtLeast("the reserve of week 1", from, 0);
  expectAtLeast("the reserve of the last week", to, 0);
  if (step !== undefined) expectAtLeast("step", step, 0);
}
