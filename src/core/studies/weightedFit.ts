/**
 * A weighted least-squares fit through the effects of studies, in the terms that pooling needs. A mean and
 * a line over dose both come in this shape, so that everything built on them is written once.
 */
export interface WeightedFit {
  /** ln |X'WX|, the log of how much the weights tell of the parameters; −Infinity where they tell too little. */
  readonly logInformation: number;
  /** How far a study's effect lies above the fit. */
  residual(study: number): number;
  /** The share of a study's own effect in its fitted value, 0 to 1. */
  leverage(study: number): number;
}

/** How studies are explained: fits themselves to any weights. A weight of 0 leaves a study out. */
export interface StudyModel<Fit extends WeightedFit = WeightedFit> {
  readonly studies: number;
  /** How many numbers the fit finds: 1 for a mean, 2 for a line. */
  readonly parameters: number;
  fit(weights: readonly number[]): Fit;
}

/** The study the fit leans on most. Differences are taken from it, so that they lose no digits. */
export function heaviest(weights: readonly number[]): number {
  return weights.reduce((best, weight, i) => (weight > weights[best]! ? i : best), 0);
}

/** Σ weight × value(i). */
export function weightedSum(weights: readonly number[], value: (i: number) => number): number {
  let total = 0;
  weights.forEach((weight, i) => (total += weight * value(i)));
  return total;
}

/**
 * The residual, but 0 where it is rounding: effects of 0.1, 0.2 and 0.3 lie on a line, and must not leave
 * a scatter of 1e-17 to test their slope against.
 */
export function withoutRounding(residual: number, largest: number): number {
  return Math.abs(residual) <= ROUNDING * largest ? 0 : residual;
}

/** The largest effect in size, by which rounding is judged. */
export function largestSize(effects: readonly number[]): number {
  return effects.reduce((largest, effect) => Math.max(largest, Math.abs(effect)), 0);
}

const ROUNDING = 1e-14;
