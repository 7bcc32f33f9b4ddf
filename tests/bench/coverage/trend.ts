import { riseCompare } from "../../../src/core/strength/riseCompare";
import { equations, type Equation } from "../../../src/core/strength/equations";
import { strengthTrend, trendSummary } from "../../../src/core/strength/strengthTrend";
import { usedSets } from "../../../src/core/strength/trend/usedSets";
import { elementAt, lastOf } from "../../present";
import { curveScenarios } from "./curve";
import type { Draws } from "./draws";
import { courses, drawLog, schemes, type Training } from "./lifters";
import type { Family, Scenario } from "./scenario";
import { chanceScenarios } from "./setChance";

const { epley } = equations;
const RUNS = { runs: 1000, shortRuns: 80 };

/** What a trend says at the end of a log, and the truth of it. */
function atTheEnd(draws: Draws, training: Training, reserveSd?: number) {
  const { sets, maxima } = drawLog(draws, training);
  const options = { equation: epley, reserveSd };
  const summary = trendSummary(usedSets(sets, options), options);
  return { ...summary, max: lastOf(maxima), gain: lastOf(maxima) / elementAt(maxima, 0) - 1 };
}

type Case = Pick<Scenario, "truth" | "case" | "band"> & {
  readonly training: Training;
  /** The spread of calls that the trend is told; its usual one unless given. */
  readonly reserveSd?: number;
};

const about95: Scenario["band"] = [0.93, 1];

const today = (cases: readonly Case[]) =>
  cases.map(({ training, ...scenario }): Scenario => ({
    function: "STRENGTHTREND",
    event: "interval holds today's maximum",
    promised: "95%",
    ...scenario,
    ...RUNS,
    run: (draws) => {
      const { low, high, max } = atTheEnd(draws, training);
      return low <= max && max <= high;
    },
  }));

const rise = (cases: readonly Case[]) =>
  cases.map(({ training, ...scenario }): Scenario => ({
    function: "STRENGTHTREND",
    event: "interval holds the rise",
    promised: "95%",
    ...scenario,
    ...RUNS,
    run: (draws) => {
      const { riseLow, riseHigh, gain } = atTheEnd(draws, training);
      return riseLow <= gain && gain <= riseHigh;
    },
  }));

const claims = (event: string, promised: string, cases: readonly Case[]) =>
  cases.map(({ training, reserveSd, ...scenario }): Scenario => ({
    function: "STRENGTHTREND",
    event,
    promised,
    ...scenario,
    ...RUNS,
    run: (draws) => atTheEnd(draws, training, reserveSd).chanceOfRise > 0.9,
  }));

const { constant, rises, wanders, twoBlocks } = courses;
const { fives, inTurn, falling, climbing } = schemes;
const mixed = (days: number, course: Training["course"], more: Partial<Training> = {}) => ({
  days,
  course,
  reps: inTurn,
  ...more,
});

/** A curve of another shape than any that is published. */
const flatter: Equation = {
  ...epley,
  fraction: (t) => 1 / (1 + (t - 1) / 28),
  repsAt: (fraction) => 1 + 28 * (1 / fraction - 1),
};

const todays = today([
  {
    truth: "tens, fives, threes in turn; constant; 20 days",
    case: "good",
    band: about95,
    training: mixed(20, constant()),
  },
  {
    truth: "tens, fives, threes in turn; rises 4%; 10 days",
    case: "good",
    band: about95,
    training: mixed(10, rises(0.04)),
  },
  {
    truth: "tens, fives, threes in turn; rises 8%; 40 days",
    case: "good",
    band: about95,
    training: mixed(40, rises(0.08)),
  },
  {
    truth: "fives only; rises 4%; 20 days",
    case: "good",
    band: [0.9, 1],
    training: { days: 20, course: rises(0.04), reps: fives },
  },
  {
    truth: "reps fall from 10 to 3; constant; 20 days",
    case: "good",
    band: about95,
    training: { days: 20, course: constant(), reps: falling },
  },
  {
    truth: "reps climb from 3 to 10; constant; 20 days",
    case: "good",
    band: [0.9, 1],
    training: { days: 20, course: constant(), reps: climbing },
  },
  {
    truth: "tens, fives, threes in turn; wanders 0.4% a day; 20 days",
    case: "good",
    band: about95,
    training: mixed(20, wanders(0.004)),
  },
  {
    truth: "tens, fives, threes in turn; wanders 0.4% a day; 100 days",
    case: "good",
    band: [0.91, 1],
    training: mixed(100, wanders(0.004)),
  },
  {
    truth: "as the first, and a tested single every fourth day",
    case: "good",
    band: about95,
    training: mixed(20, constant(), { testEvery: 4 }),
  },
  {
    truth: "as the first, all sets to failure, half reps rounded",
    case: "good",
    band: about95,
    training: mixed(20, constant(), { call: "to failure, rounded" }),
  },
  {
    truth: "as the first, all sets to failure, half reps lost",
    case: "bad",
    band: [0.75, 1],
    training: mixed(20, constant(), { call: "to failure, floored" }),
  },
  {
    truth: "fives only; rises 8%; 40 days",
    case: "bad",
    band: [0.85, 1],
    training: { days: 40, course: rises(0.08), reps: fives },
  },
  {
    truth: "fives only; wanders 0.8% a day; 40 days",
    case: "bad",
    band: about95,
    training: { days: 40, course: wanders(0.008), reps: fives },
  },
  {
    truth: "a curve of another shape; tens, fives, threes; rises 6%; 20 days",
    case: "bad",
    band: [0.84, 1],
    training: mixed(20, rises(0.06), { lifter: { equation: flatter } }),
  },
]);

const rises95 = rise([
  {
    truth: "tens, fives, threes in turn; rises 4%; 10 days",
    case: "good",
    band: [0.9, 1],
    training: mixed(10, rises(0.04)),
  },
  {
    truth: "tens, fives, threes in turn; rises 8%; 40 days",
    case: "good",
    band: about95,
    training: mixed(40, rises(0.08)),
  },
  {
    truth: "reps fall from 10 to 3; constant; 20 days",
    case: "good",
    band: about95,
    training: { days: 20, course: constant(), reps: falling },
  },
  {
    truth: "tens, fives, threes in turn; wanders 0.4% a day; 20 days",
    case: "good",
    band: [0.92, 1],
    training: mixed(20, wanders(0.004)),
  },
  {
    truth: "fives only; wanders 0.8% a day; 20 days",
    case: "bad",
    band: [0.9, 1],
    training: { days: 20, course: wanders(0.008), reps: fives },
  },
]);

const tensToThrees = (days: number, more: Partial<Training> = {}): Training => ({
  days,
  course: constant(),
  reps: falling,
  ...more,
});

const falseRises = claims("chance of rise above 0.9 where nothing rose", "at most 10%", [
  {
    truth: "tens, fives, threes in turn; 20 days",
    case: "good",
    band: [0, 0.1],
    training: mixed(20, constant()),
  },
  {
    truth: "reps fall from 10 to 3, and a tested single every fourth day; 20 days",
    case: "bad",
    band: [0, 0.15],
    training: tensToThrees(20, { testEvery: 4 }),
  },
  {
    truth: "reps fall from 10 to 3; 20 days",
    case: "bad",
    band: [0, 0.18],
    training: tensToThrees(20),
  },
  {
    truth: "reps fall from 10 to 3; 20 days; reserveSd 1.5, as such calls are",
    case: "good",
    band: [0, 0.13],
    training: tensToThrees(20),
    reserveSd: 1.5,
  },
  {
    truth: "reps fall from 10 to 3; 40 days",
    case: "bad",
    band: [0, 0.22],
    training: tensToThrees(40),
  },
  {
    truth: "reps fall from 10 to 3, a curve of another shape; 20 days",
    case: "bad",
    band: [0, 0.2],
    training: tensToThrees(20, { lifter: { equation: flatter } }),
  },
  {
    truth: "reps fall from 10 to 3, loads planned by the equation, not by feel; 20 days",
    case: "bad",
    band: [0, 0.28],
    training: tensToThrees(20, { plannedBy: "equation" }),
  },
]);

const seenRises = claims("chance of rise above 0.9 where it rose", "the more the better", [
  {
    truth: "fives only; rises 4%; 20 days",
    case: "good",
    band: [0.55, 1],
    training: { days: 20, course: rises(0.04), reps: fives },
  },
  {
    truth: "reps fall from 10 to 3; rises 6%; 20 days",
    case: "bad",
    band: [0.25, 1],
    training: { days: 20, course: rises(0.06), reps: falling },
  },
]);

/** Any day of the log, not only the last. */
const anyDay: Scenario = {
  function: "STRENGTHTREND",
  event: "interval of the first day holds its maximum",
  truth: "tens, fives, threes in turn; rises 4%; 20 days",
  case: "good",
  promised: "95%",
  band: [0.91, 1],
  ...RUNS,
  runs: 500,
  run: (draws) => {
    const { sets, maxima } = drawLog(draws, mixed(20, rises(0.04)));
    const { low, high } = elementAt(strengthTrend(sets, { equation: epley }).table, 0);
    const truth = elementAt(maxima, 0);
    return low <= truth && truth <= high;
  },
};

const SQUAD = 8;
const squad: Scenario = {
  function: "SQUADTREND",
  event: "a lifter who did not rise has a chance above 0.9",
  truth: `${SQUAD} lifters of 20 days, tens, fives, threes in turn; half of them rise 5%`,
  case: "good",
  promised: "at most 10%",
  band: [0, 0.1],
  runs: 250,
  shortRuns: 20,
  run: (draws) =>
    draws.times(SQUAD / 2, () => atTheEnd(draws, mixed(20, constant())).chanceOfRise > 0.9),
};

/** What comparing the halves of a log says, and the truth of it. */
function compared(draws: Draws, training: Training) {
  const { sets, maxima, days } = drawLog(draws, training);
  const at = days.length / 2;
  const result = riseCompare(elementAt(days, at), sets, { equation: epley });
  const rate = (from: number, to: number) =>
    (7 * Math.log(elementAt(maxima, to) / elementAt(maxima, from))) /
    (elementAt(days, to) - elementAt(days, from));
  return { ...result, truth: Math.expm1(rate(at - 1, days.length - 1) - rate(0, at - 1)) };
}

const holdsDifference = (
  truth: string,
  kind: Scenario["case"],
  band: Scenario["band"],
  training: Training,
): Scenario => ({
  function: "RISECOMPARE",
  event: "interval holds the difference of the rises",
  truth,
  case: kind,
  promised: "95%",
  band,
  ...RUNS,
  run: (draws) => {
    const { low, high, truth: difference } = compared(draws, training);
    return low <= difference && difference <= high;
  },
});

const twoRises: Scenario[] = [
  holdsDifference("5%, then none; 20 days", "good", [0.9, 1], mixed(20, twoBlocks(0.05, 0))),
  holdsDifference("none, then 5%; 20 days", "good", [0.9, 1], mixed(20, twoBlocks(0, 0.05))),
  holdsDifference("5%, then none; 40 days", "good", [0.9, 1], mixed(40, twoBlocks(0.05, 0))),
  holdsDifference("equal rises of 4%, reps fall from 10 to 3; 40 days", "bad", [0.9, 1], {
    days: 40,
    course: twoBlocks(0.04, 0.04),
    reps: falling,
  }),
  {
    function: "RISECOMPARE",
    event: "chance of a faster rise above 0.9 where both are equal",
    truth: "3% each; 20 days",
    case: "good",
    promised: "at most 10%",
    band: [0, 0.1],
    ...RUNS,
    run: (draws) => compared(draws, mixed(20, twoBlocks(0.03, 0.03))).chanceOfAFasterRise > 0.9,
  },
];

export const trend: Family = {
  name: "trend",
  scenarios: [
    ...todays,
    anyDay,
    ...rises95,
    ...falseRises,
    ...seenRises,
    squad,
    ...twoRises,
    ...curveScenarios,
    ...chanceScenarios,
  ],
};
