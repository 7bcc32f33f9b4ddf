import type { Absent } from "../problem";
import { chiSquareUpperTail } from "../statistics/distributions";
import { leftOver } from "./leftOver";
import { precisions } from "./restrictedLikelihood";
import type { StudyModel } from "./weightedFit";

/** How far studies scatter beyond what their own standard errors explain. */
export interface Heterogeneity {
  /** Cochran's Q: Σ w r² about the fit with weights 1 / SE² (Cochran 1954, Biometrics 10:101-129). */
  readonly q: number;
  /** The chance of so large a Q from studies that differ by chance alone. */
  readonly qP: number | Absent;
  /**
   * I², the share of the scatter that lies between studies: (Q − df) / Q, at least 0 (Higgins and Thompson
   * 2002, Stat Med 21:1539-1558).
   */
  readonly shareBetweenStudies: number | Absent;
}

export function heterogeneity(model: StudyModel, variances: readonly number[]): Heterogeneity {
  const q = weightedSquares(model, precisions(variances, 0));
  const df = model.studies - model.parameters;
  if (df === 0) {
    const absent = "one study says nothing about how studies differ";
    return { q, qP: { absent }, shareBetweenStudies: { absent } };
  }
  return {
    q,
    qP: chiSquareUpperTail(q, df),
    shareBetweenStudies: q > df ? (q - df) / q : 0,
  };
}

/**
 * The between-study variance by moments: the τ² under which Q would be what it is on average, at least 0
 * (DerSimonian and Laird 1986, Control Clin Trials 7:177-188).
 */
export function dersimonianLairdVariance(model: StudyModel, variances: readonly number[]): number {
  const weights = precisions(variances, 0);
  const df = model.studies - model.parameters;
  return Math.max(0, (weightedSquares(model, weights) - df) / freeWeight(model, weights));
}

/** Σ w (1 − leverage), the weight that the fit leaves free: for a mean, Σw − Σw²/Σw. */
export function freeWeight(model: StudyModel, weights: readonly number[]): number {
  return leftOver(model, weights, model.fit(weights)).reduce(
    (sum, { weight, free }) => sum + weight * free,
    0,
  );
}

/** Σ w r² about the weighted fit. */
export function weightedSquares(model: StudyModel, weights: readonly number[]): number {
  return leftOver(model, weights, model.fit(weights)).reduce(
    (sum, { weight, residual }) => sum + weight * residual ** 2,
    0,
  );
}
