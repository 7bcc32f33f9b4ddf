import { NoAnswer, type Absent } from "../problem";
import { requireProbability } from "../statistics/distributions";
import { effectInterval } from "./effectInterval";
import { dersimonianLairdVariance } from "./heterogeneity";
import { requireStudies } from "./inputs";
import { meanModel } from "./meanModel";
import { remlVariance } from "./remlVariance";
import { precisions } from "./restrictedLikelihood";
import { scatterFactor, type PoolInterval } from "./scatterFactor";
import type { StudyModel } from "./weightedFit";

/** How the variance between studies is found: restricted likelihood, moments, or taken to be 0. */
export type PoolMethod = "reml" | "dl" | "fixed";

/** How studies are pooled. */
export interface PoolOptions {
  readonly method?: PoolMethod;
  readonly interval?: PoolInterval;
  readonly confidence?: number;
}

/** The mean of studies pooled. */
export interface PooledMean {
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
}

/**
 * The mean effect of several studies (random-effects meta-analysis), and how much their true effects differ.
 *
 * With interval "t" the standard error is Hartung and Knapp's, on k − 1 degrees of freedom: the studies' actual
 * scatter about the estimate, √(H / Σ w), H held to at least 1 (`scatterFactor`); with "t unheld" without that
 * floor. "fixed" supposes one true effect, so its interval is always the normal one.
 *
 * One study is its own estimate. With interval "z" its own standard error stands; Hartung and Knapp's, and
 * the variance between studies, cannot be had from one study and are absent.
 */
export function pooledMean(
  effects: readonly number[],
  standardErrors: readonly number[],
  { method = "reml", interval = "t", confidence = 0.95 }: PoolOptions = {},
): PooledMean {
  requireStudies(effects, standardErrors);
  requireProbability("confidence", confidence);
  const studies = effects.length;
  if (studies === 0) throw new NoAnswer("there are no studies to pool");

  const variances = standardErrors.map((error) => error ** 2);
  const model = meanModel(effects);
  const between = betweenStudyVariance(model, variances, method);
  const weights = precisions(variances, between);
  const { estimate, variance } = model.fit(weights);
  return { studies, estimate, ...intervalOf(), ...spreadOf() };

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
    const { factor, df } = scatterFactor(model, weights, interval);
    const standardError = Math.sqrt(factor * variance);
    return { standardError, ...effectInterval(estimate, standardError, confidence, df) };
  }

  function spreadOf() {
    if (studies === 1 && method !== "fixed") {
      const none: Absent = { absent: "one study says nothing about how studies differ" };
      return { betweenStudySd: none, betweenStudyVariance: none };
    }
    return { betweenStudySd: Math.sqrt(between), betweenStudyVariance: between };
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
