import { NoAnswer, type Absent } from "../problem";
import { criticalValue, requireProbability } from "../statistics/distributions";
import { effectInterval } from "./effectInterval";
import { dersimonianLairdVariance, heterogeneity, weightedSquares } from "./heterogeneity";
import { requireStudies } from "./inputs";
import { meanModel } from "./meanModel";
import { remlVariance } from "./remlVariance";
import { precisions } from "./restrictedLikelihood";
import type { StudyModel } from "./weightedFit";

/** How the variance between studies is found: restricted likelihood, moments, or taken to be 0. */
export type PoolMethod = "reml" | "dl" | "fixed";

/** What the interval is built on: Student's t with Hartung and Knapp's standard error, or the normal. */
export type PoolInterval = "t" | "z";

export interface PoolOptions {
  readonly method?: PoolMethod;
  readonly interval?: PoolInterval;
  readonly confidence?: number;
}

export interface PooledStudies {
  readonly studies: number;
  /** The mean effect, each study weighted by 1 / (SE² + between-study variance). */
  readonly estimate: number;
  readonly standardError: number | Absent;
  readonly low: number | Absent;
  readonly high: number | Absent;
  readonly statistic: number | Absent;
  readonly p: number | Absent;
  readonly betweenStudySd: number | Absent;
  readonly betweenStudyVariance: number | Absent;
  readonly shareBetweenStudies: number | Absent;
  readonly q: number;
  readonly qP: number | Absent;
  /** Where the true effect of one more study would lie. */
  readonly predictLow: number | Absent;
  readonly predictHigh: number | Absent;
}

/**
 * Pools the effects of several studies into one (random-effects meta-analysis).
 *
 * With interval "t" the standard error is Hartung and Knapp's, on k − 1 degrees of freedom: the studies'
 * actual scatter about the estimate, √(Σ w r² / (k − 1) / Σ w), not held to be at least 1 / √Σ w (Hartung
 * and Knapp 2001, Stat Med 20:3875-3889). The prediction interval is estimate ± t(k − 2) √(τ² + 1 / Σ w)
 * either way (Higgins, Thompson and Spiegelhalter 2009, J R Stat Soc A 172:137-159). "fixed" supposes one
 * true effect, so its interval is always the normal one and there is nothing to predict.
 *
 * One study is its own estimate. With interval "z" its own standard error stands; Hartung and Knapp's, and
 * the variance between studies, cannot be had from one study and are absent.
 */
export function poolStudies(
  effects: readonly number[],
  standardErrors: readonly number[],
  { method = "reml", interval = "t", confidence = 0.95 }: PoolOptions = {},
): PooledStudies {
  requireStudies(effects, standardErrors);
  requireProbability("confidence", confidence);
  const studies = effects.length;
  if (studies === 0) throw new NoAnswer("there are no studies to pool");

  const variances = standardErrors.map((error) => error ** 2);
  const model = meanModel(effects);
  const between = betweenStudyVariance(model, variances, method);
  const weights = precisions(variances, between);
  const { estimate, variance } = model.fit(weights);
  return {
    studies,
    estimate,
    ...intervalOf(),
    ...spreadOf(),
    ...heterogeneity(model, variances),
    ...predictionOf(),
  };

  function intervalOf() {
    if (method === "fixed" || interval === "z") {
      const standardError = Math.sqrt(variance);
      return { standardError, ...effectInterval(estimate, standardError, confidence) };
    }
    if (studies === 1) {
      const absent = 'one study has no t interval; its own is the "z" interval';
      const none: Absent = { absent };
      return { standardError: none, low: none, high: none, statistic: none, p: none };
    }
    const factor = weightedSquares(model, weights) / (studies - 1);
    const standardError = Math.sqrt(factor * variance);
    return { standardError, ...effectInterval(estimate, standardError, confidence, studies - 1) };
  }

  function spreadOf() {
    if (studies === 1 && method !== "fixed") {
      const none: Absent = { absent: "one study says nothing about how studies differ" };
      return { betweenStudySd: none, betweenStudyVariance: none };
    }
    return { betweenStudySd: Math.sqrt(between), betweenStudyVariance: between };
  }

  function predictionOf() {
    if (method === "fixed") {
      const none: Absent = { absent: '"fixed" supposes one true effect, so none is predicted' };
      return { predictLow: none, predictHigh: none };
    }
    if (studies < 3) {
      const none: Absent = { absent: `a prediction needs at least 3 studies; found ${studies}` };
      return { predictLow: none, predictHigh: none };
    }
    const reach = criticalValue(confidence, studies - 2) * Math.sqrt(between + variance);
    return { predictLow: estimate - reach, predictHigh: estimate + reach };
  }
}

function betweenStudyVariance(
  model: StudyModel,
  variances: readonly number[],
  method: PoolMethod,
): number {
  if (method === "fixed" || variances.length === 1) return 0;
  return method === "dl"
    ? dersimonianLairdVariance(model, variances)
    : remlVariance(model, variances);
}
