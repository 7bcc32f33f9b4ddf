/** A variance, such as that of a group's mean, and the degrees of freedom it was estimated on. */
export interface EstimatedVariance {
  readonly variance: number;
  readonly df: number;
}

/**
 * The degrees of freedom of the sum of two variances, at least one of them above 0. Computed from their
 * shares of the sum, so that a tiny or an enormous unit makes no difference.
 *
 * Source: Satterthwaite 1946, Biometrics 2:110-114; Welch 1938, Biometrika 29:350-362.
 */
export function sumDegreesOfFreedom(a: EstimatedVariance, b: EstimatedVariance): number {
  const whole = a.variance + b.variance;
  return 1 / ((a.variance / whole) ** 2 / a.df + (b.variance / whole) ** 2 / b.df);
}
