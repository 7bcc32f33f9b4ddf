import { roundToMultiple } from "../../../src/core/load/round";
import { ownCurve } from "../../../src/core/strength/equations";
import type { Chance } from "./chance";
import type { Lift, Rower } from "./squad";

/** A day of the season: what is planned, and how much of the season is over. */
export interface TrainingDay {
  readonly date: string;
  readonly week: number;
  readonly plan: PlannedWeek;
  readonly weekday: "Mon" | "Wed" | "Fri";
  /** 0 on the first day, 1 on the last. */
  readonly progress: number;
}

/** What a week asks of the main sets. */
export interface PlannedWeek {
  readonly reps: number;
  readonly reserve: number;
  readonly backOffSets: number;
  /** An easy week has no Friday. */
  readonly easy: boolean;
}

/** Three blocks of four, three and two weeks, each closer to failure than it began, with an easy week between. */
const PLAN: readonly PlannedWeek[] = [
  { reps: 11, reserve: 3, backOffSets: 2, easy: false },
  { reps: 10, reserve: 3, backOffSets: 2, easy: false },
  { reps: 10, reserve: 2, backOffSets: 3, easy: false },
  { reps: 10, reserve: 2, backOffSets: 3, easy: false },
  { reps: 7, reserve: 4, backOffSets: 1, easy: true },
  { reps: 8, reserve: 3, backOffSets: 2, easy: false },
  { reps: 7, reserve: 2, backOffSets: 3, easy: false },
  { reps: 6, reserve: 1, backOffSets: 3, easy: false },
  { reps: 5, reserve: 4, backOffSets: 1, easy: true },
  { reps: 5, reserve: 2, backOffSets: 3, easy: false },
  { reps: 3, reserve: 1, backOffSets: 2, easy: false },
];

const FIRST_MONDAY = Date.UTC(2025, 8, 1);
const DAY = 24 * 60 * 60 * 1000;
const WEEKDAYS = { Mon: 0, Wed: 2, Fri: 4 } as const;
const LAST_DAY = 7 * (PLAN.length - 1) + WEEKDAYS.Fri;

export const DAYS: readonly TrainingDay[] = PLAN.flatMap((plan, index) =>
  (plan.easy ? (["Mon", "Wed"] as const) : (["Mon", "Wed", "Fri"] as const)).map((weekday) => {
    const day = 7 * index + WEEKDAYS[weekday];
    return {
      date: new Date(FIRST_MONDAY + day * DAY).toISOString().slice(0, 10),
      week: index + 1,
      plan,
      weekday,
      progress: day / LAST_DAY,
    };
  }),
);

/** A rower's true maximum on a day: most of the gain comes early, and no two days are alike. */
export function maximumOn(day: TrainingDay, rower: Rower, lift: Lift, form: number): number {
  const gained = rower.gain * (1 - (1 - day.progress) ** 1.6);
  return rower.maxima[lift] * (1 + gained) * form;
}

/** How today's form moves every lift of the day. */
export const formOf = (chance: Chance): number => 1 + chance.normal(0, 0.015);

/** The reps to failure a load allows, by the rower's own curve; below 1 it does not move. */
export const repsAllowed = (load: number, maximum: number, { constant }: Rower): number =>
  load >= maximum ? 1 : ownCurve(constant).repsAt(load / maximum);

/** The load that leaves so many reps, as the bar can carry it. */
export const loadForReps = (repsToFailure: number, maximum: number, { constant }: Rower): number =>
  roundToMultiple(maximum * ownCurve(constant).fraction(repsToFailure), 2.5, "nearest-tie-down");

/**
 * The reserve a rower calls when `left` reps are left. Cautious rowers call fewer, all call better near failure,
 * and all learn over the season.
 */
export function calledReserve(
  left: number,
  rower: Rower,
  progress: number,
  chance: Chance,
): number {
  const learnt = 1 - 0.75 * progress;
  const distance = 0.4 + 0.6 * Math.min(1, left / 4);
  const called = left - learnt * distance * rower.caution + chance.normal(0, learnt * distance);
  return Math.max(0, Math.round(called));
}
