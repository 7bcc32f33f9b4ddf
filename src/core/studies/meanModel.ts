import {
  heaviest,
  largestSize,
  weightedSum,
  withoutRounding,
  type StudyModel,
  type WeightedFit,
} from "./weightedFit";

export interface MeanFit extends WeightedFit {
  /** The weighted mean, Σ w y / Σ w. */
  readonly estimate: number;
  /** Its variance where the weights are the studies' true precisions, 1 / Σ w. */
  readonly variance: number;
}

/** All studies around one mean. */
export function meanModel(effects: readonly number[]): StudyModel<MeanFit> {
  const largest = largestSize(effects);
  return {
    studies: effects.length,
    parameters: 1,
    fit(weights) {
      const total = weightedSum(weights, () => 1);
      const anchor = effects[heaviest(weights)]!;
      const shift = weightedSum(weights, (i) => effects[i]! - anchor) / total;
      return {
        estimate: anchor + shift,
        variance: 1 / total,
        logInformation: Math.log(total),
        residual: (i) => withoutRounding(effects[i]! - anchor - shift, largest),
        leverage: (i) => weights[i]! / total,
      };
    },
  };
}
