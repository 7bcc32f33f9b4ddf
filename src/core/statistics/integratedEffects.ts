import type { NormalMixture } from "./normalMixture";
import { likelySpreads, type LikelySpread, type SpreadInputs } from "./likelySpreads";

/** What is known of true values behind noisy ones. */
export interface IntegratedEffects {
  /** What is known of one of the true values. */
  effect(index: number): NormalMixture;
  /** What is known of the true value of one more, not measured yet. */
  readonly next: NormalMixture;
  /** What is known of the middle of all true values. */
  readonly middle: NormalMixture;
  /** The pairs of spreads the mixtures are made of, one to one. */
  readonly spreads: readonly LikelySpread[];
}

/**
 * What several noisy values tell of the true ones, when nobody knows how far the true ones lie apart.
 *
 * y_i ~ N(theta_i, sigma² c_i) and theta_i ~ N(mu, omega²). Each true value is drawn towards the middle mu, the
 * more so the less the values scatter beyond their errors. How far apart the true values lie, omega, is
 * integrated over a half-normal prior, exp(-omega² / (2 scale²)), instead of being put at one estimate; so the
 * intervals hold with few values too. mu has a flat prior. Where sigma is an estimate on `df` degrees of
 * freedom, it is integrated too: df s² / sigma² is a chi-square, ln sigma has a flat prior.
 *
 * Sources: Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., ch. 5.4; half-normal prior: Gelman 2006,
 * Bayesian Anal 1:515-533; Röver et al. 2021, Res Synth Methods 12:448-474.
 */
export function integratedEffects(inputs: SpreadInputs): IntegratedEffects {
  const spreads = likelySpreads(inputs);
  return {
    spreads,
    effect: (index) => spreads.map((spread) => effectGiven(spread, inputs, index)),
    next: spreads.map(({ weight, omega, middle, middleVariance }) => ({
      weight,
      mean: middle,
      sd: Math.sqrt(middleVariance + omega * omega),
    })),
    middle: spreads.map(({ weight, middle, middleVariance }) => ({
      weight,
      mean: middle,
      sd: Math.sqrt(middleVariance),
    })),
  };
}

/** A true value if these were the spreads: drawn towards the middle by the error's share of the variance. */
function effectGiven(
  { weight, sigma, omega, middle, middleVariance }: LikelySpread,
  { values, errorVariances }: SpreadInputs,
  index: number,
) {
  const error = sigma * sigma * errorVariances[index]!;
  const whole = omega * omega + error;
  const kept = (omega * omega) / whole;
  const givenUp = error / whole;
  return {
    weight,
    mean: middle + kept * (values[index]! - middle),
    sd: Math.sqrt(kept * error + givenUp * givenUp * middleVariance),
  };
}
