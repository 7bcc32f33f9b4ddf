import { integratedEffects } from "../statistics/integratedEffects";
import { freeWeight } from "./heterogeneity";
import { meanModel } from "./meanModel";
import { precisions } from "./restrictedLikelihood";
import type { NormalMixture } from "../statistics/normalMixture";

/** How wide the prior of the spread between studies is, in typical standard errors. */
const WIDE = 4;

/**
 * Where the true effect of one more study would lie: the spread between studies, which a few of them cannot
 * tell, is integrated over a half-normal prior with a scale of 4 typical standard errors. An interval about
 * one estimate of that spread holds too seldom with 4 to 10 studies, and is far too wide with 3.
 */
export function nextEffect(
  effects: readonly number[],
  standardErrors: readonly number[],
): NormalMixture {
  const variances = standardErrors.map((error) => error ** 2);
  const scale = WIDE * Math.sqrt(typicalVariance(variances));
  return integratedEffects({ values: effects, errorVariances: variances, sigma: 1, scale }).next;
}

/**
 * The variance of a typical study: (k − 1) Σw / ((Σw)² − Σw²), w = 1 / SE² (Higgins and Thompson 2002, Stat
 * Med 21:1539-1558).
 */
function typicalVariance(variances: readonly number[]): number {
  // The effects play no part in the weights a mean leaves free.
  const model = meanModel(variances.map(() => 0));
  return (variances.length - 1) / freeWeight(model, precisions(variances, 0));
}
