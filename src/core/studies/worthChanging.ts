import { BadInput, NoAnswer, type Absent } from "../problem";
import { atLeast, atMost } from "../statistics/compare";
import { criticalValue, requireProbability, upperP } from "../statistics/distributions";
import { requireNumber, requirePositive, requireStudies } from "./inputs";
import { meanModel } from "./meanModel";
import { remlVariance } from "./remlVariance";
import { precisions } from "./restrictedLikelihood";

/** From these chances on, the reading speaks for a side. */
const LIKELY_WORTH_IT = 0.8;
const UNLIKELY_WORTH_IT = 0.2;
const MOST_HARM = 0.05;

export type WorthChangingReading = "change" | "keep" | "test it first";

export interface WorthChanging {
  /** The mean effect of the earlier studies. */
  readonly before: number;
  readonly beforeLow: number | Absent;
  readonly beforeHigh: number | Absent;
  /** The new study's effect, drawn toward what the earlier studies led one to expect. */
  readonly shrunkNewStudy: number;
  readonly shrunkLow: number;
  readonly shrunkHigh: number;
  /** What one more squad can expect to gain, in its own units. */
  readonly expectedGain: number;
  readonly gainLow: number;
  readonly gainHigh: number;
  /** The chance that the gain is above the smallest that matters. */
  readonly chanceWorthIt: number;
  /** The chance of a loss larger than the smallest that matters. */
  readonly chanceHarmful: number;
  readonly reading: WorthChangingReading;
}

export interface EarlierStudies {
  readonly effects: readonly number[];
  readonly standardErrors: readonly number[];
}

export interface NewStudy {
  readonly effect: number;
  readonly standardError: number;
}

export interface Squad {
  /** The between-athlete standard deviation, which turns a standardized effect into the squad's units. */
  readonly sd: number;
  /** The smallest gain that matters, in the same units. */
  readonly smallest: number;
}

/**
 * Should the next block change, now that a new study is out?
 *
 * A new study is read in the light of the earlier ones, and the question is not the mean of all squads but
 * what one more squad, this one, would get: the prediction of a random-effects pool (REML), estimate ±
 * t(k − 2) √(τ² + SE²) (Higgins, Thompson and Spiegelhalter 2009, J R Stat Soc A 172:137-159). The new
 * study's own effect is its precision-weighted mean with N(before, τ² + SE²) of the earlier ones.
 *
 * The reading is "change" where the gain is likely (0.8) above `smallest` and hardly (0.05) below −`smallest`,
 * "keep" where it is unlikely (0.2) above, else "test it first".
 */
export function worthChanging(
  { effects, standardErrors }: EarlierStudies,
  newStudy: NewStudy,
  squad: Squad,
  confidence = 0.95,
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
  const earlier = effects.length;
  if (earlier < 2) throw new NoAnswer(`found ${earlier} earlier studies; expected at least 2`);

  const before = nextStudy(effects, standardErrors);
  const after = nextStudy(
    [...effects, newStudy.effect],
    [...standardErrors, newStudy.standardError],
  );
  return { ...beforeOf(), ...shrunkOf(), ...gainOf() };

  function beforeOf() {
    if (earlier < 3) {
      const none: Absent = { absent: `a prediction needs at least 3 studies; found ${earlier}` };
      return { before: before.mean, beforeLow: none, beforeHigh: none };
    }
    const reach = criticalValue(confidence, earlier - 2) * Math.sqrt(before.variance);
    return {
      before: before.mean,
      beforeLow: before.mean - reach,
      beforeHigh: before.mean + reach,
    };
  }

  function shrunkOf() {
    const own = newStudy.standardError ** 2;
    const shareOfNew = before.variance / (before.variance + own);
    const shrunkNewStudy = before.mean + shareOfNew * (newStudy.effect - before.mean);
    const reach = criticalValue(confidence) * Math.sqrt(shareOfNew * own);
    return {
      shrunkNewStudy,
      shrunkLow: shrunkNewStudy - reach,
      shrunkHigh: shrunkNewStudy + reach,
    };
  }

  function gainOf() {
    const df = earlier + 1 - 2;
    const expectedGain = squad.sd * after.mean;
    const spread = squad.sd * Math.sqrt(after.variance);
    const reach = criticalValue(confidence, df) * spread;
    const chanceWorthIt = upperP((squad.smallest - expectedGain) / spread, df);
    const chanceHarmful = upperP((squad.smallest + expectedGain) / spread, df);
    return {
      expectedGain,
      gainLow: expectedGain - reach,
      gainHigh: expectedGain + reach,
      chanceWorthIt,
      chanceHarmful,
      reading: read(chanceWorthIt, chanceHarmful),
    };
  }
}

/** What the studies so far lead one to expect of the true effect of the next. */
function nextStudy(effects: readonly number[], standardErrors: readonly number[]) {
  const variances = standardErrors.map((error) => error ** 2);
  const model = meanModel(effects);
  const between = remlVariance(model, variances);
  const { estimate, variance } = model.fit(precisions(variances, between));
  return { mean: estimate, variance: between + variance };
}

function read(chanceWorthIt: number, chanceHarmful: number): WorthChangingReading {
  if (atLeast(chanceWorthIt, LIKELY_WORTH_IT) && atMost(chanceHarmful, MOST_HARM)) return "change";
  return atMost(chanceWorthIt, UNLIKELY_WORTH_IT) ? "keep" : "test it first";
}
