import { expectAtLeast } from "../checks";
import { BadInput, NoAnswer } from "../problem";
import { difference } from "../statistics/compare";
import { requireProbability } from "../statistics/distributions";
import { integratedEffects } from "../statistics/integratedEffects";
import {
  mixtureAbove,
  mixtureBelow,
  mixtureInterval,
  mixtureMean,
} from "../statistics/normalMixture";
import { type ChangeReading, changeReading } from "./changeReading";

/** Two scores of one athlete. */
export interface ScorePair {
  readonly before: number;
  readonly after: number;
}

/** What is known of the test, and what is asked of it. */
export interface SquadTest {
  readonly typicalError: number;
  /** The degrees of freedom of the typical error, 1 or more; known exactly where not given. */
  readonly df?: number | undefined;
  /** The smallest change that matters, 0 or more. */
  readonly smallest: number;
  readonly confidence: number;
  /** How far apart true changes may lie: 4 typical errors where not given. */
  readonly scale?: number | undefined;
}

/** What came of one athlete among the squad. */
export interface SquadChange {
  readonly reading: ChangeReading;
  /** After − before. */
  readonly change: number;
  /** The change drawn towards the squad's, as far as test error explains the distance. */
  readonly shrunkChange: number;
  /** The interval of the true change. */
  readonly low: number;
  readonly high: number;
  readonly chanceAbove: number;
  readonly chanceBelow: number;
}

/** Changes this many typical errors apart are no changes of one test: the two are not in the same unit. */
const FURTHEST_APART = 1000;
/** Wide enough for any squad: the answers of narrower priors fall short where athletes differ much. */
const USUAL_SCALE = 4;

/**
 * Who of a squad changed, when all are tested at once. Taken one by one, one of twenty who did not change
 * comes out "real" by chance; and the largest change of a squad is the luckiest too. So each change is drawn
 * towards the squad's mean, the further the less the changes spread beyond test error, and how far they spread
 * is not put at one estimate but integrated over. Each of the two scores holds test error, so that a change
 * has twice the variance of one.
 *
 * Source: Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., ch. 5.4; Gelman 2006, Bayesian Anal 1:515-533.
 *
 * @param pairs - The two scores of each athlete.
 * @param test - The test's error and what is asked of it.
 * @returns A row an athlete, in the pairs' order.
 * @throws BadInput where the test cannot be. NoAnswer where nobody has both scores.
 */
export function squadChange(pairs: readonly ScorePair[], test: SquadTest): SquadChange[] {
  const { typicalError, smallest, df, confidence, scale = USUAL_SCALE * typicalError } = test;
  if (smallest < 0) {
    throw new BadInput(`smallest is ${smallest}; expected 0 or more`);
  }
  requireProbability("confidence", confidence);
  if (df !== undefined) expectAtLeast("df", df, 1);
  if (pairs.length === 0) throw new NoAnswer("no athlete has a score both before and after");
  const changes = pairs.map(({ before, after }) => difference(after, before));
  expectOneUnit(changes, typicalError);
  const { effect } = integratedEffects({
    values: changes,
    errorVariances: changes.map(() => 2),
    sigma: typicalError,
    df,
    scale,
  });
  return changes.map((change, athlete) => {
    const trueChange = effect(athlete);
    const interval = mixtureInterval(trueChange, confidence);
    return {
      reading: changeReading(interval, smallest),
      change,
      shrunkChange: mixtureMean(trueChange),
      ...interval,
      chanceAbove: mixtureAbove(trueChange, smallest),
      chanceBelow: mixtureBelow(trueChange, -smallest),
    };
  });
}

function expectOneUnit(changes: readonly number[], typicalError: number): void {
  const least = changes.reduce((a, b) => Math.min(a, b));
  const most = changes.reduce((a, b) => Math.max(a, b));
  if (most - least > FURTHEST_APART * typicalError) {
    throw new BadInput(
      `the changes go from ${least} to ${most}, over ${FURTHEST_APART} typical errors of ${typicalError} apart; ` +
        "expected both in one unit",
    );
  }
}
