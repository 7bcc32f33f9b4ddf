import { implementations } from "../../src/functions/implementations";
import { drawsFor, type Draws } from "./coverage/draws";
import { courses, drawLog, schemes } from "./coverage/lifters";
import { median } from "./median";

const DAYS = 100;
const LIFTERS = 40;
const LIFTS = ["Squat", "Deadlift", "Bench pull"];

/** What a coach will wait for: a picture that redraws, and a squad's table in one cell. */
const MOST_MS = { log: 25, squad: 3000 };

type Column = unknown[][];

/** A log of three sets a day, as the columns that a sheet hands over. */
function invent(draws: Draws): [date: Column, load: Column, reps: Column, reserve: Column] {
  const { sets } = drawLog(draws, {
    days: DAYS,
    course: courses.wanders(0.003),
    reps: schemes.inTurn,
  });
  return [
    sets.map(({ date }) => [date]),
    sets.map(({ load }) => [load]),
    sets.map(({ reps }) => [reps]),
    sets.map(({ reserve }) => [String(reserve)]),
  ];
}

/** STRENGTHTREND of a long log with its table, and SQUADTREND of a whole squad in one call. */
export function benchTrend(): void {
  const draws = drawsFor("bench");
  const logs = draws.times(20, () => invent(draws));
  // Once over beforehand, as tinybench does: the first calls are slower while the code is compiled.
  for (const log of logs) implementations.STRENGTHTREND(...log);
  const trends = logs.map((log) => millisecondsOf(() => implementations.STRENGTHTREND(...log)));

  const keyed = draws.times(LIFTERS * LIFTS.length, (index) => {
    const by = [`Rower ${Math.floor(index / LIFTS.length) + 1}`, LIFTS[index % LIFTS.length]];
    const [dates, ...columns] = invent(draws);
    return [dates.map(() => by), dates, ...columns];
  });
  const squad = [0, 1, 2, 3, 4].map((column) => keyed.flatMap((columns) => columns[column]));
  const squads = Array.from({ length: 3 }, () =>
    millisecondsOf(() => implementations.SQUADTREND(...squad)),
  );

  console.log("\nStrength from a log (median, processor time)");
  console.table([
    {
      call: `STRENGTHTREND, ${DAYS} days of 3 sets, with its table`,
      ms: round(median(trends)),
      "at most": MOST_MS.log,
    },
    {
      call: `SQUADTREND, ${LIFTERS} lifters x ${LIFTS.length} lifts x ${DAYS} days of 3 sets`,
      ms: round(median(squads)),
      "at most": MOST_MS.squad,
    },
  ]);
}

/** Milliseconds of processor time, so that a busy machine counts for nothing. */
function millisecondsOf(work: () => unknown): number {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

const round = (value: number) => Math.round(value * 10) / 10;
