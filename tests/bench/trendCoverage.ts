import { seededRandom } from "../../src/core/statistics/seededRandom";
import { equations } from "../../src/core/strength/equations";
import { strengthTrend } from "../../src/core/strength/strengthTrend";
import type { LoggedSet } from "../../src/core/strength/trend/usedSets";

/**
 * How often the 95% interval of the strength trend holds the true maximum, over invented logs with a known
 * truth, each as messy as a real one: whole reps, reserve called in whole reps and never below 0, loads in
 * steps of 2.5, good days and bad, one to four days apart.
 *
 * The first kind of log decides: a lifter who gains 8% over 40 training days, fast and then slowly. The
 * others are printed because some are worse and a reader should know it: where the level wanders at random
 * and the log is short, the log cannot tell how far it wanders, and the interval, which takes the two
 * variances as known, is too narrow.
 *
 * Run it with `npx tsx tests/bench/trendCoverage.ts`.
 */
const LOGS = 500;
const EXPECTED = { least: 0.92, most: 0.98 };

const SETS_A_DAY = 4;
/** Standard deviations: a day's form, as a fraction; a call of reserve, in reps. */
const DAY_NOISE = 0.015;
const CALL_ERROR = 1;

type Random = () => number;

/** A standard normal number (Box and Muller 1958, Ann Math Stat 29:610-611). */
const normal = (random: Random) =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** The true ln 1RM of each training day, above that of the first. */
type Truth = (gaps: readonly number[], random: Random) => number[];

/** A gain of so much, more than half of it in the first quarter. */
const risesAndSlows =
  (gain: number): Truth =>
  (gaps) =>
    gaps.map(
      (_, day) => (gain * (1 - Math.exp((-3 * day) / (gaps.length - 1)))) / (1 - Math.exp(-3)),
    );

/** A random walk with this standard deviation a day. */
const wanders =
  (deviation: number): Truth =>
  (gaps, random) => {
    let level = 0;
    return gaps.map((gap) => (level += deviation * Math.sqrt(gap) * normal(random)));
  };

interface Kind {
  readonly name: string;
  readonly days: number;
  readonly truth: Truth;
}

const deciding: Kind = { name: "rises 8% and slows", days: 40, truth: risesAndSlows(0.08) };
const others: readonly Kind[] = [
  { name: "rises 8% and slows", days: 20, truth: risesAndSlows(0.08) },
  { name: "stays as it is", days: 40, truth: wanders(0) },
  { name: "wanders 0.4% a day", days: 20, truth: wanders(0.004) },
  { name: "wanders 0.4% a day", days: 40, truth: wanders(0.004) },
  { name: "wanders 0.4% a day", days: 100, truth: wanders(0.004) },
];

const { epley } = equations;

/** A set of 3 to 8 planned reps aimed at 1 to 4 in reserve; the lifter stops there or where they fail. */
function inventedSet(date: number, oneRepMax: number, random: Random): LoggedSet {
  const planned = 3 + Math.floor(6 * random());
  const aimed = planned + 1 + Math.floor(4 * random());
  const load = Math.round((oneRepMax * epley.fraction(aimed)) / 2.5) * 2.5;
  const toFailure = Math.max(1, epley.repsAt(load / oneRepMax));
  const reps = Math.min(planned, Math.floor(toFailure));
  const felt = toFailure - reps + CALL_ERROR * normal(random);
  return { date, load, reps, reserve: Math.max(0, Math.round(felt)) };
}

/** For each day of one invented log, whether the interval held the truth. */
function holds({ days, truth }: Kind, seed: number): boolean[] {
  const random = seededRandom(seed);
  const gaps = Array.from({ length: days }, () => 1 + Math.floor(4 * random()));
  const start = Math.log(60 + 140 * random());
  const levels = truth(gaps, random).map((level) => start + level);
  let date = 45_901;
  const sets = levels.flatMap((level, day) => {
    date += gaps[day]!;
    const oneRepMax = Math.exp(level + DAY_NOISE * normal(random));
    return Array.from({ length: SETS_A_DAY }, () => inventedSet(date, oneRepMax, random));
  });
  const { table } = strengthTrend(sets, { equation: epley });
  if (table.length !== days) throw new Error("a day of the invented log is missing");
  return table.map(({ low, high }, day) => {
    const oneRepMax = Math.exp(levels[day]!);
    return low <= oneRepMax && oneRepMax <= high;
  });
}

function coverage(kind: Kind): { today: number; anyDay: number } {
  const logs = Array.from({ length: LOGS }, (_, i) => holds(kind, i + 1));
  const shareOf = (held: readonly boolean[]) => held.filter(Boolean).length / held.length;
  return { today: shareOf(logs.map((days) => days.at(-1)!)), anyDay: shareOf(logs.flat()) };
}

const percent = (share: number) => `${(100 * share).toFixed(1)}%`;
console.log(`the 95% interval holds the true maximum, over ${LOGS} invented logs of each kind:`);
for (const kind of [deciding, ...others]) {
  const { today, anyDay } = coverage(kind);
  const log = `${kind.name}, ${kind.days} days`;
  console.log(`  ${log.padEnd(30)} today ${percent(today)}, any day ${percent(anyDay)}`);
  if (kind === deciding && (today < EXPECTED.least || today > EXPECTED.most)) {
    console.error(`expected today's between ${EXPECTED.least} and ${EXPECTED.most}`);
    process.exitCode = 1;
  }
}
