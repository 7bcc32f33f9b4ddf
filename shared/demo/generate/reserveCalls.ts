import { chanceFrom, type Chance } from "./chance";
import {
  calledReserve,
  DAYS,
  formOf,
  loadForReps,
  maximumOn,
  repsAllowed,
  type TrainingDay,
} from "./season";
import { SQUAD, type Lift, type Rower } from "./squad";

type Cell = number | string;

export const CALL_HEADINGS = [
  "date",
  "week",
  "lifter",
  "lift",
  "rep at call",
  "called reserve",
  "reps to failure",
];

/** Lifts that are safe to take to failure: the bar can be put down. */
const LIFTS_TO_FAILURE = ["Bench pull", "Bench press"] as const satisfies readonly Lift[];

/** Every Wednesday each rower calls a reserve in the middle of two sets and goes on to failure. */
export function reserveCalls(): Cell[][] {
  const chance = chanceFrom(1998);
  return DAYS.filter(({ weekday }) => weekday === "Wed").flatMap((day) =>
    SQUAD.flatMap((rower) => {
      const form = formOf(chance);
      return LIFTS_TO_FAILURE.map((lift) => oneCall(day, rower, lift, form, chance));
    }),
  );
}

function oneCall(day: TrainingDay, rower: Rower, lift: Lift, form: number, chance: Chance): Cell[] {
  const maximum = maximumOn(day, rower, lift, form);
  const load = loadForReps(chance.oneOf([8, 9, 10, 11, 12]), maximum / form, rower);
  const toFailure = Math.max(3, Math.floor(repsAllowed(load, maximum, rower)));
  const atCall = Math.max(2, toFailure - chance.oneOf([1, 2, 2, 3, 3, 4, 5]));
  const called = calledReserve(toFailure - atCall, rower, day.progress, chance);
  const cells = [day.date, day.week, rower.name, lift];
  if (chance.happens(rower.misses)) return [...cells, "DNS", "", ""];
  return [...cells, atCall, chance.happens(rower.forgets / 4) ? "" : called, toFailure];
}
