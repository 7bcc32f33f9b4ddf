import type { StudyModel, WeightedFit } from "./weightedFit";

/** What a fit leaves of one study: its weight, its residual, and the share of its effect the fit did not take up. */
export interface LeftOver {
  readonly weight: number;
  readonly residual: number;
  /** 1 − leverage. */
  readonly free: number;
}

/**
 * What a fit leaves of each study.
 *
 * A study a thousand times as precise as the others fixes the fit almost alone. Its residual and 1 − its
 * leverage are then differences of nearly equal numbers, and their digits are lost, though its huge weight
 * makes them count. Such a study is set against the fit of all the others instead: |X'WX| without it, over
 * |X'WX| with it, is 1 − leverage, and the residual is that share of its distance from the others' fit.
 */
export function leftOver(
  model: StudyModel,
  weights: readonly number[],
  fit: WeightedFit,
): LeftOver[] {
  return weights.map((weight, study) => {
    const leverage = fit.leverage(study);
    if (leverage < 0.5) return { weight, residual: fit.residual(study), free: 1 - leverage };
    const others = model.fit(weights.map((other, i) => (i === study ? 0 : other)));
    const free = Math.exp(others.logInformation - fit.logInformation);
    // Where the others alone do not fix the fit, it passes through this study whatever its effect.
    return { weight, residual: free === 0 ? 0 : free * others.residual(study), free };
  });
}
