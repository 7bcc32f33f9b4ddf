import { leftOver } from "./leftOver";
import type { StudyModel } from "./weightedFit";

/** The precision of each study once the variance between studies is added to its own. */
export function precisions(variances: readonly number[], between: number): number[] {
  return variances.map((variance) => 1 / (variance + between));
}

/**
 * The restricted log likelihood of a between-study variance τ², but for a constant:
 * −½ (Σ ln(v + τ²) + ln |X'WX| + Σ w r²), w = 1 / (v + τ²) and r the residuals of the weighted fit
 * (Harville 1977, J Am Stat Assoc 72:320-338).
 */
export function restrictedLogLikelihood(
  model: StudyModel,
  variances: readonly number[],
  between: number,
): number {
  const weights = precisions(variances, between);
  const fit = model.fit(weights);
  const left = leftOver(model, weights, fit);
  return (
    -(
      fit.logInformation +
      left.reduce((sum, { weight: w, residual }) => sum - Math.log(w) + w * residual ** 2, 0)
    ) / 2
  );
}

/**
 * Its slope, ½ (y'PPy − tr P) = ½ (Σ w² r² − Σ w (1 − leverage)): above zero where the studies disagree
 * more than this between-study variance explains.
 */
export function restrictedSlope(
  model: StudyModel,
  variances: readonly number[],
  between: number,
): number {
  const weights = precisions(variances, between);
  const left = leftOver(model, weights, model.fit(weights));
  return (
    left.reduce((sum, { weight: w, residual, free }) => sum + (w * residual) ** 2 - w * free, 0) / 2
  );
}
