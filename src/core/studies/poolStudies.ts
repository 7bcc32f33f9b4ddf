import { NoAnswer, type Absent } from "../problem";
import { mixtureInterval } from "../statistics/normalMixture";
import { heterogeneity, type Heterogeneity } from "./heterogeneity";
import { meanModel } from "./meanModel";
import { nextEffect } from "./nextEffect";
import { pooledMean, type PooledMean, type PoolOptions } from "./pooledMean";

/** What came of studies pooled. */
export interface PooledStudies extends PooledMean, Heterogeneity {
  /** Where the true effect of one more study would lie. */
  readonly predictLow: number | Absent;
  readonly predictHigh: number | Absent;
}

/**
 * Pools the effects of several studies: their mean (`pooledMean`), how far they scatter (`heterogeneity`) and
 * where one more would lie (`nextEffect`). The last does not hang on method and interval; but "fixed" supposes
 * one true effect, so there is nothing to predict.
 *
 * Source: REML, Harville 1977; interval, Hartung and Knapp 2001, held as in Röver, Knapp and Friede 2015;
 * DerSimonian and Laird 1986, Control Clin Trials 7:177-188.
 *
 * @param effects - An effect a study, all in one unit.
 * @param standardErrors - The standard error of each effect, above 0.
 * @param options - What can be said besides; see its type.
 * @returns The mean with its interval, the scatter, and where one more study would lie.
 * @throws BadInput where an effect or standard error cannot be. NoAnswer where there are no studies.
 */
export function poolStudies(
  effects: readonly number[],
  standardErrors: readonly number[],
  options: PoolOptions = {},
): PooledStudies {
  const mean = pooledMean(effects, standardErrors, options);
  const variances = standardErrors.map((error) => error ** 2);
  return {
    ...mean,
    ...heterogeneity(meanModel(effects), variances),
    ...prediction(effects, standardErrors, options),
  };
}

function prediction(
  effects: readonly number[],
  standardErrors: readonly number[],
  { method, confidence = 0.95 }: PoolOptions,
) {
  const none = (absent: string) => ({ predictLow: { absent }, predictHigh: { absent } });
  if (method === "fixed") return none('"fixed" supposes one true effect, so none is predicted');
  if (effects.length < 3) {
    return none(`a prediction needs at least 3 studies; found ${effects.length}`);
  }
  try {
    const { low, high } = mixtureInterval(nextEffect(effects, standardErrors), confidence);
    return { predictLow: low, predictHigh: high };
  } catch (problem) {
    // Effects a million million times their errors apart: the pool stands, a prediction there is none.
    if (problem instanceof NoAnswer) return none(problem.message);
    throw problem;
  }
}
