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

export const LOG_HEADINGS = [
  "date",
  "week",
  "lifter",
  "lift",
  "load, kg",
  "reps",
  "reserve",
  "sets",
];

const LIFTS_OF_DAY = {
  Mon: ["Back squat", "Bench pull", "Overhead press"],
  Wed: ["Deadlift", "Bench press"],
  Fri: ["Back squat", "Bench pull"],
} as const satisfies Record<TrainingDay["weekday"], readonly Lift[]>;

/** Eleven weeks of the squad's land training, a row for sets that were alike, as the coach would write them down. */
export function trainingLog(): Cell[][] {
  const chance = chanceFrom(2025);
  return DAYS.flatMap((day) =>
    SQUAD.flatMap((rower) =>
      chance.happens(rower.misses)
        ? missedSession(day, rower, chance)
        : trainedSession(day, rower, chance),
    ),
  );
}

function trainedSession(day: TrainingDay, rower: Rower, chance: Chance): Cell[][] {
  const form = formOf(chance);
  const rows: Cell[][] = LIFTS_OF_DAY[day.weekday].flatMap((lift) =>
    liftRows(day, rower, lift, form, chance),
  );
  return day.weekday === "Wed" ? [...rows, pullUps(day, rower, chance)] : rows;
}

/** A lifter who was not there, and why: nothing was lifted, and the log says so. */
function missedSession(day: TrainingDay, rower: Rower, chance: Chance): Cell[][] {
  const reason = chance.oneOf(["DNS", "DNS", "ill"]);
  return LIFTS_OF_DAY[day.weekday].map((lift) => rowOf(day, rower, lift, "", reason, "", ""));
}

/** A top set at the planned reserve, then lighter sets; Fridays are lighter throughout. */
function liftRows(
  day: TrainingDay,
  rower: Rower,
  lift: Lift,
  form: number,
  chance: Chance,
): Cell[][] {
  const { reps, reserve, backOffSets } = day.plan;
  const maximum = maximumOn(day, rower, lift, form);
  // The coach plans from what was lifted lately, not from the truth.
  const believed = (maximum / form) * (1 + chance.normal(-0.01, 0.015));
  const topLoad = loadForReps(reps + reserve + (day.weekday === "Fri" ? 1 : 0), believed, rower);
  const backOffLoad = loadForReps(reps + reserve + 2, believed, rower);
  const row = (load: number, sets: number): Cell[] => {
    const allowed = repsAllowed(load, maximum, rower);
    const done = Math.max(1, Math.min(reps, Math.floor(allowed)));
    const left = Math.max(0, allowed - done);
    const called = calledReserve(left, rower, day.progress, chance);
    const written = chance.happens(rower.forgets) ? "" : called;
    return rowOf(day, rower, lift, load, done, written, sets);
  };
  return [row(topLoad, 1), row(backOffLoad, backOffSets)];
}

function pullUps(day: TrainingDay, rower: Rower, chance: Chance): Cell[] {
  const reps = Math.max(3, Math.round(chance.normal(6 + 3 * day.progress, 1.5)));
  const reserve = chance.happens(rower.forgets) ? "" : chance.oneOf([1, 2, 2, 3]);
  return rowOf(day, rower, "Pull-up", "BW", reps, reserve, 3);
}

const rowOf = (
  { date, week }: TrainingDay,
  { name }: Rower,
  lift: string,
  load: Cell,
  reps: Cell,
  reserve: Cell,
  sets: Cell,
): Cell[] => [date, week, name, lift, load, reps, reserve, sets];
