import { weightedSquares } from "./heterogeneity";
import type { StudyModel } from "./weightedFit";

/**
 * What an interval is built on: Student's t with the studies' actual scatter, never taken for less than their
 * own standard errors lead one to expect; the same without that floor; or the normal and the model alone.
 */
export type PoolInterval = "t" | "t unheld" | "z";

/** What a fit's variances are multiplied by, and the degrees of freedom of Student's t (none: normal). */
export interface Scatter {
  readonly factor: number;
  readonly df: number | undefined;
}

/**
 * The studies' actual scatter about a fit, in units of the scatter expected: H = Σ w r² / (k − p) for k
 * studies and a fit of p numbers (Hartung and Knapp 2001, Stat Med 20:3875-3889; Knapp and Hartung 2003,
 * Stat Med 22:2693-2710).
 *
 * A few studies often agree by luck better than their standard errors allow. Taken at its word, H then makes
 * the interval narrower than with no differences between studies at all, and it fails too often; so "t" holds
 * H to at least 1 (Röver, Knapp and Friede 2015, BMC Med Res Methodol 15:99).
 */
export function scatterFactor(
  model: StudyModel,
  weights: readonly number[],
  interval: PoolInterval,
): Scatter {
  if (interval === "z") return { factor: 1, df: undefined };
  const df = model.studies - model.parameters;
  const scatter = weightedSquares(model, weights) / df;
  return { factor: interval === "t" ? Math.max(1, scatter) : scatter, df };
}
