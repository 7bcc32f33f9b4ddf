import {
  heaviest,
  largestSize,
  weightedSum,
  withoutRounding,
  type StudyModel,
  type WeightedFit,
} from "./weightedFit";

export interface LineFit extends WeightedFit {
  readonly slope: number;
  /** The variance of the slope where the weights are the studies' true precisions. */
  readonly slopeVariance: number;
  /** The line's height at a dose. */
  estimateAt(dose: number): number;
  /** The variance of that height where the weights are the studies' true precisions. */
  varianceAt(dose: number): number;
}

/** Studies around a straight line over dose. */
export function lineModel(
  doses: readonly number[],
  effects: readonly number[],
): StudyModel<LineFit> {
  const largest = largestSize(effects);
  return {
    studies: effects.length,
    parameters: 2,
    fit(weights) {
      const total = weightedSum(weights, () => 1);
      const anchor = heaviest(weights);
      const [anchorDose, anchorEffect] = [doses[anchor]!, effects[anchor]!];
      const doseShift = weightedSum(weights, (i) => doses[i]! - anchorDose) / total;
      const effectShift = weightedSum(weights, (i) => effects[i]! - anchorEffect) / total;
      const dose = (i: number) => doses[i]! - anchorDose - doseShift;
      const effect = (i: number) => effects[i]! - anchorEffect - effectShift;
      const spread = weightedSum(weights, (i) => dose(i) ** 2);
      const slope = weightedSum(weights, (i) => dose(i) * effect(i)) / spread;
      const fromMiddle = (at: number) => at - anchorDose - doseShift;
      return {
        slope,
        slopeVariance: 1 / spread,
        logInformation: Math.log(total) + Math.log(spread),
        residual: (i) => withoutRounding(effect(i) - slope * dose(i), largest),
        leverage: (i) => weights[i]! * (1 / total + dose(i) ** 2 / spread),
        estimateAt: (at) => anchorEffect + effectShift + slope * fromMiddle(at),
        varianceAt: (at) => 1 / total + fromMiddle(at) ** 2 / spread,
      };
    },
  };
}
