import { BadInput, NoAnswer } from "../problem";
import { atLeast, atMost } from "../statistics/compare";
import { requireProbability } from "../statistics/distributions";
import { integratedEffects } from "../statistics/integratedEffects";
import {
  mixtureAbove,
  mixtureBelow,
  mixtureInterval,
  mixtureMean,
} from "../statistics/normalMixture";
import { requireNumber, requirePositive, requireStudies } from "./inputs";

/** From these chances on, the reading speaks for a side. */
const LIKELY_WORTH_IT = 0.8;
const UNLIKELY_WORTH_IT = 0.2;
const MOST_HARM = 0.05;

/**
 * How far effects of studies may differ, in standard deviations of athletes: a prior that leaves spreads
 * above 1 unlikely, as they are seen to be.
 */
export const USUAL_SCALE = 0.5;

/** What to do. */
export type WorthChangingReading = "change" | "keep" | "test it first";

/** What the studies say to that squad. */
export interface WorthChanging {
  /** What the earlier studies led one to expect of the true effect of one more. */
  readonly before: number;
  readonly beforeLow: number;
  readonly beforeHigh: number;
  /** The new study's true effect, drawn toward the middle of all. */
  readonly shrunkNewStudy: number;
  readonly shrunkLow: number;
  readonly shrunkHigh: number;
  /** What one more squad can expect to gain, in its own units. */
  readonly expectedGain: number;
  readonly gainLow: number;
  readonly gainHigh: number;
  /** The chance that the gain is above the smallest that matters. */
  readonly chanceAboveSmallest: number;
  /** The chance of a loss larger than the smallest that matters. */
  readonly chanceBelowMinusSmallest: number;
  readonly reading: WorthChangingReading;
}

/** An effect a study with its standard error, in SDs of athletes. */
export interface EarlierStudies {
  readonly effects: readonly number[];
  readonly standardErrors: readonly number[];
}

/** The new study's effect with its standard error. */
export interface NewStudy {
  readonly effect: number;
  readonly standardError: number;
}

/** The squad that asks. */
export interface Squad {
  /** The between-athlete standard deviation, which turns a standardized effect into the squad's units. */
  readonly sd: number;
  /** The smallest gain that matters, in the same units. */
  readonly smallest: number;
}

/** What can be said besides the studies and the squad. */
export interface WorthChangingOptions {
  readonly confidence?: number;
  /** The scale of the half-normal prior of the spread between studies, in standard deviations. */
  readonly scale?: number;
}

/**
 * Should the next block change, now that a new study is out?
 *
 * A new study is read in the light of the earlier ones, and the question is not the mean of all squads but
 * what one more squad, this one, would get. How far studies differ, which a few of them cannot tell, is
 * integrated (`integratedEffects`) and not put at one estimate: the shrunk effect of the new study would
 * otherwise be called too certain.
 *
 * The reading is "change" where the gain is likely (0.8) above `smallest` and hardly (0.05) below −`smallest`,
 * "keep" where it is unlikely (0.2) above, else "test it first". With `smallest` 0 any loss is harm, and so
 * "change" needs a chance of 0.95.
 *
 * Source: Gelman 2006, Bayesian Anal 1:515-533, for the prior; the decision rule is our own.
 *
 * @param newStudy - The new study's effect and standard error, in SDs of athletes.
 * @param squad - The squad's SD, and the smallest gain that matters in its unit.
 * @returns The shrunk new study, the gain of one more squad, and the reading.
 * @throws BadInput where a value is out of its range. NoAnswer where there are fewer than 2 earlier studies.
 */
export function worthChanging(
  { effects, standardErrors }: EarlierStudies,
  newStudy: NewStudy,
  squad: Squad,
  { confidence = 0.95, scale = USUAL_SCALE }: WorthChangingOptions = {},
): WorthChanging {
  requireStudies(effects, standardErrors);
  requireNumber("newEffect", newStudy.effect);
  requirePositive("newStandardError", newStudy.standardError);
  requirePositive("squadSd", squad.sd);
  requireNumber("smallest", squad.smallest);
  if (squad.smallest < 0) {
    throw new BadInput(`smallest is ${squad.smallest}; expected 0 or more`);
  }
  requireProbability("confidence", confidence);
  requirePositive("scale", scale);
  const earlier = effects.length;
  if (earlier < 2) throw new NoAnswer(`found ${earlier} earlier studies; expected at least 2`);

  const before = integrated(effects, standardErrors).next;
  const all = integrated(
    [...effects, newStudy.effect],
    [...standardErrors, newStudy.standardError],
  );
  const shrunk = all.effect(earlier);
  const [beforeEnds, shrunkEnds, gainEnds] = [before, shrunk, all.next].map((mixture) =>
    mixtureInterval(mixture, confidence),
  );
  const smallestEffect = squad.smallest / squad.sd;
  const chanceAboveSmallest = mixtureAbove(all.next, smallestEffect);
  const chanceBelowMinusSmallest = mixtureBelow(all.next, -smallestEffect);
  return {
    before: mixtureMean(before),
    beforeLow: beforeEnds!.low,
    beforeHigh: beforeEnds!.high,
    shrunkNewStudy: mixtureMean(shrunk),
    shrunkLow: shrunkEnds!.low,
    shrunkHigh: shrunkEnds!.high,
    expectedGain: squad.sd * mixtureMean(all.next),
    gainLow: squad.sd * gainEnds!.low,
    gainHigh: squad.sd * gainEnds!.high,
    chanceAboveSmallest,
    chanceBelowMinusSmallest,
    reading: read(chanceAboveSmallest, chanceBelowMinusSmallest),
  };

  function integrated(values: readonly number[], errors: readonly number[]) {
    const errorVariances = errors.map((error) => error ** 2);
    return integratedEffects({ values, errorVariances, sigma: 1, scale });
  }
}

function read(aboveSmallest: number, belowMinusSmallest: number): WorthChangingReading {
  if (atLeast(aboveSmallest, LIKELY_WORTH_IT) && atMost(belowMinusSmallest, MOST_HARM)) {
    return "change";
  }
  return atMost(aboveSmallest, UNLIKELY_WORTH_IT) ? "keep" : "test it first";
}
