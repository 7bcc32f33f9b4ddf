import type { Equation } from "../../../src/core/strength/equations";
import { equations } from "../../../src/core/strength/equations";
import type { LoggedSet } from "../../../src/core/strength/trend/usedSets";
import { elementAt } from "../../present";
import type { Draws } from "./draws";

/** What nobody knows of a lifter. */
export interface Lifter {
  /** The load-repetition equation they follow, but for their own factor. */
  readonly equation: Equation;
  /** They get 1 + (t − 1) × factor reps where the equation says t. */
  readonly factor: number;
  /** How many reps more than they say they have left, on average. */
  readonly bias: number;
  /** How far a day's form lies from their level: a standard deviation, as a fraction. */
  readonly form: number;
}

/** A lifter as lifters differ: a factor about 1, a bias about 0, form of 1 to 3%. */
export const drawLifter = (draws: Draws, known: Partial<Lifter> = {}): Lifter => ({
  equation: equations.epley,
  factor: Math.exp(draws.normal(0, 0.25)),
  bias: draws.normal(0, 0.5),
  form: 0.01 + 0.02 * draws.uniform(),
  ...known,
});

/** The load that a maximum can lift t times, by the lifter's own curve. */
export const ownLoad = ({ equation, factor }: Lifter, oneRepMax: number, t: number) =>
  oneRepMax * equation.fraction(1 + (t - 1) / factor);

/** The reps to failure that a maximum has in it at a load; below 1 where it cannot lift it at all. */
export function ownReps({ equation, factor }: Lifter, oneRepMax: number, load: number): number {
  const share = load / oneRepMax;
  return share > 1 ? 0 : 1 + (equation.repsAt(share) - 1) * factor;
}

/** How a set is logged: with a called reserve, or taken to failure and counted. */
export type Call = "called" | "to failure, rounded" | "to failure, floored";

/**
 * What a load is planned by: the lifter's own curve, as if by feel; or the equation, so that a lifter of another curve
 * leaves more or fewer reps than was meant.
 */
export type PlannedBy = "own curve" | "equation";

/** What a set is planned to be. */
export interface Plan {
  readonly reps: number;
  /** Reps to leave. */
  readonly leave: number;
  readonly by: PlannedBy;
}

/**
 * One set: the load is planned for the level that the coach knows, to 2.5 kg; the lifter stops at the planned reps or
 * where they fail, and calls what they feel is left in whole reps. The further from failure, the worse the call.
 */
export function drawSet(
  draws: Draws,
  lifter: Lifter,
  day: { readonly date: number; readonly level: number; readonly today: number },
  plan: Plan,
  call: Call,
): LoggedSet {
  const by = plan.by === "own curve" ? lifter : { ...lifter, factor: 1 };
  const load = Math.round(ownLoad(by, day.level, plan.reps + plan.leave) / 2.5) * 2.5;
  const most = Math.max(1, ownReps(lifter, day.today, load));
  const { date } = day;
  if (call === "to failure, rounded") return { date, load, reps: Math.round(most), reserve: 0 };
  if (call === "to failure, floored") return { date, load, reps: Math.floor(most), reserve: 0 };
  const reps = Math.min(plan.reps, Math.floor(most));
  const left = most - reps;
  const felt = left - lifter.bias + draws.normal(0, (1 + left) / 3);
  const reserve = reps < plan.reps ? 0 : Math.max(0, Math.round(felt));
  return { date, load, reps, reserve };
}

/** How a training log comes about. */
export interface Training {
  readonly days: number;
  /** The level above the first day's, as a fraction on the logarithm, by training day; may be drawn. */
  readonly course: (draws: Draws, days: readonly number[]) => readonly number[];
  /** The planned reps of a training day: its place among them, from 0 to 1, and its number. */
  readonly reps: (place: number, day: number) => number;
  readonly setsADay?: number;
  readonly call?: Call;
  readonly plannedBy?: PlannedBy;
  /** Every so many days a single is tested as well. */
  readonly testEvery?: number;
  readonly lifter?: Partial<Lifter>;
}

/** A log, and the truth behind it: the maximum on each training day, without the day's form. */
export interface TrueLog {
  readonly sets: readonly LoggedSet[];
  readonly maxima: readonly number[];
  readonly days: readonly number[];
  readonly lifter: Lifter;
}

/** A log of one lifter and lift: a training day every two or three. */
export function drawLog(draws: Draws, training: Training): TrueLog {
  const { setsADay = 3, call = "called", plannedBy: by = "own curve", testEvery } = training;
  const lifter = drawLifter(draws, training.lifter);
  let date = 45_700;
  const days = draws.times(training.days, () => (date += draws.whole(2, 3)));
  const start = 80 + 100 * draws.uniform();
  const maxima = training.course(draws, days).map((rise) => start * Math.exp(rise));
  const sets = days.flatMap((date, day) => {
    const level = elementAt(maxima, day);
    const today = level * Math.exp(draws.normal(0, lifter.form));
    const reps = training.reps(day / (days.length - 1), day);
    const planned = draws.times(setsADay, () => {
      const leave = call === "called" ? draws.whole(1, 4) : 0;
      return drawSet(draws, lifter, { date, level, today }, { reps, leave, by }, call);
    });
    const tested = testEvery !== undefined && day % testEvery === testEvery - 1;
    const single = { date, load: Math.floor(today / 2.5) * 2.5, reps: 1, reserve: 0 };
    return tested ? [...planned, single] : planned;
  });
  return { sets, maxima, days, lifter };
}

/** Courses that a lifter's maximum may take. */
export const courses = {
  constant: (): Training["course"] => (_draws, days) => days.map(() => 0),

  rises:
    (by: number): Training["course"] =>
    (_draws, days) =>
      days.map((_, day) => (Math.log1p(by) * day) / (days.length - 1)),

  /** A random walk with so large a step a day. */
  wanders:
    (sd: number): Training["course"] =>
    (draws, days) => {
      let level = 0;
      return days.map((date, day) => {
        const gone = date - (days[day - 1] ?? date);
        if (gone > 0) level += draws.normal(0, sd * Math.sqrt(gone));
        return level;
      });
    },

  /** Rises in the first half of the days by so much, in the second by so much. */
  twoBlocks:
    (first: number, second: number): Training["course"] =>
    (_draws, days) => {
      const turn = days.length / 2 - 1;
      return days.map((_, day) =>
        day <= turn
          ? (Math.log1p(first) * day) / turn
          : Math.log1p(first) + (Math.log1p(second) * (day - turn)) / (days.length - 1 - turn),
      );
    },
} as const;

/** Plans of reps that training may follow. */
export const schemes = {
  fives: () => 5,
  /** Tens, fives and threes in turn. */
  inTurn: (_place: number, day: number) => elementAt([10, 5, 3], day % 3),
  /** From tens down to threes. */
  falling: (place: number) => Math.round(10 - 7 * place),
  /** From threes up to tens. */
  climbing: (place: number) => Math.round(3 + 7 * place),
} as const;
