import { setChance } from "../../../src/core/load/setChance";
import { equations } from "../../../src/core/strength/equations";
import { trendSummary } from "../../../src/core/strength/strengthTrend";
import { usedSets } from "../../../src/core/strength/trend/usedSets";
import { lastOf } from "../../present";
import type { Draws } from "./draws";
import { courses, drawLifter, drawLog, ownReps, schemes, type Lifter } from "./lifters";
import type { Scenario } from "./scenario";

const { epley } = equations;

/** The sets to look at: those that were given about four chances in five. */
const LEAST = 0.7;
const MOST = 0.9;

/** A load near the one that the equation gives for so many reps. */
const nearLoad = (draws: Draws, oneRepMax: number, reps: number) =>
  oneRepMax * epley.fraction(reps) * (0.85 + 0.2 * draws.uniform());

const isMade = (lifter: Lifter, today: number, load: number, reps: number) =>
  ownReps(lifter, today, load) >= reps;

const event = `a set given a chance of ${100 * LEAST} to ${100 * MOST}% is made`;
const promised = `${100 * LEAST} to ${100 * MOST}%`;

/** A maximum known to 3%, from a test of late. */
const fromATest: Scenario = {
  function: "SETCHANCE",
  event,
  truth: "3 to 10 reps; maximum known to 3%, curves differ by a quarter",
  case: "good",
  promised,
  band: [LEAST, MOST],
  runs: 6000,
  shortRuns: 1500,
  run: (draws) => {
    const lifter = drawLifter(draws);
    const reps = draws.whole(3, 10);
    const load = nearLoad(draws, 100, reps);
    const chance = setChance(load, reps, 100, { equation: epley });
    if (chance < LEAST || chance > MOST) return [];
    return isMade(lifter, 100 * Math.exp(draws.normal(0, 0.03)), load, reps);
  },
};

/** The maximum and its spread as a trend has them, and a day's form on top. */
const fromATrend: Scenario = {
  function: "SETCHANCE",
  event,
  truth: "3 to 10 reps on the next day, from the trend of 20 days of tens, fives and threes",
  case: "bad",
  promised,
  band: [LEAST, 1],
  runs: 1500,
  shortRuns: 200,
  run: (draws) => {
    const { sets, maxima, lifter } = drawLog(draws, {
      days: 20,
      course: courses.rises(0.03),
      reps: schemes.inTurn,
    });
    const options = { equation: epley };
    const { today, low, high } = trendSummary(usedSets(sets, options), options);
    const maxSd = Math.log(high / low) / 3.92;
    const form = lastOf(maxima) * Math.exp(draws.normal(0, lifter.form));
    return draws
      .times(4, () => {
        const reps = draws.whole(3, 10);
        return { reps, load: nearLoad(draws, today, reps) };
      })
      .filter(({ reps, load }) => {
        const chance = setChance(load, reps, today, { equation: epley, maxSd });
        return chance >= LEAST && chance <= MOST;
      })
      .map(({ reps, load }) => isMade(lifter, form, load, reps));
  },
};

export const chanceScenarios: readonly Scenario[] = [fromATest, fromATrend];
