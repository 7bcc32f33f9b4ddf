import { NoAnswer, type Absent } from "../problem";
import { criticalValue, requireProbability } from "../statistics/distributions";
import { atLeast, atMost, sameTo } from "../statistics/compare";
import { effectInterval } from "./effectInterval";
import { requireNumber, requireSameLength, requireStudies, SMALLEST } from "./inputs";
import { lineModel, type LineFit } from "./lineModel";
import { remlVariance } from "./remlVariance";
import { precisions } from "./restrictedLikelihood";
import { scatterFactor, type PoolInterval, type Scatter } from "./scatterFactor";

/** How sure the intervals are to be, and how they are made. */
export interface DoseResponseOptions {
  readonly interval?: PoolInterval;
  readonly confidence?: number;
}

/** The line through the studies. */
export interface DoseResponse {
  readonly studies: number;
  readonly intercept: number;
  /** How much the effect rises for one more unit of dose. */
  readonly slope: number;
  readonly slopeStandardError: number;
  readonly low: number;
  readonly high: number;
  readonly statistic: number | Absent;
  readonly p: number | Absent;
  readonly betweenStudySd: number;
}

/** The mean effect expected at a dose, and its interval. */
export interface DoseEstimate {
  readonly dose: number;
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
  /** Whether the studies' doses reach it: the line says little beyond them. */
  readonly inside: boolean;
}

/**
 * How the effect of a study goes with its dose: a straight line, each study weighted by 1 / (SE² + τ²), τ²
 * being the variance between studies of one dose, by restricted maximum likelihood.
 *
 * With interval "t" the standard errors are Knapp and Hartung's, on k − 2 degrees of freedom, held to at least
 * the studies' own; with "t unheld" without that floor (`scatterFactor`); with "z" the studies' own and the
 * normal.
 *
 * Source: Knapp and Hartung 2003, Stat Med 22:2693-2710.
 *
 * @param doses - The dose of each study, in any one unit.
 * @param effects - An effect a study, all in one unit.
 * @param standardErrors - The standard error of each effect, above 0.
 * @returns Intercept and slope with its interval and test.
 * @throws BadInput where a value cannot be. NoAnswer where there are fewer than 3 studies, or all have one dose.
 */
export function doseResponse(
  doses: readonly number[],
  effects: readonly number[],
  standardErrors: readonly number[],
  { interval = "t", confidence = 0.95 }: DoseResponseOptions = {},
): DoseResponse {
  requireProbability("confidence", confidence);
  const { line, factor, df, between } = fitLine(doses, effects, standardErrors, interval);
  const slopeStandardError = Math.sqrt(factor * line.slopeVariance);
  return {
    studies: effects.length,
    intercept: line.estimateAt(0),
    slope: line.slope,
    slopeStandardError,
    ...effectInterval(line.slope, slopeStandardError, confidence, df),
    betweenStudySd: Math.sqrt(between),
  };
}

/**
 * The mean effect that line gives at each of some doses, with the interval of that mean.
 *
 * Source: as for `doseResponse`; Knapp and Hartung 2003.
 *
 * @param doses - The dose of each study, in any one unit.
 * @param effects - An effect a study, all in one unit.
 * @param standardErrors - The standard error of each effect, above 0.
 * @param at - The doses to look at.
 * @returns The line's effect at each dose, with its interval.
 * @throws BadInput where a value cannot be. NoAnswer as for `doseResponse`.
 */
export function effectsAtDoses(
  doses: readonly number[],
  effects: readonly number[],
  standardErrors: readonly number[],
  at: readonly number[],
  { interval = "t", confidence = 0.95 }: DoseResponseOptions = {},
): DoseEstimate[] {
  requireProbability("confidence", confidence);
  at.forEach((dose, i) => {
    requireNumber(`value ${i + 1} of at`, dose);
  });
  const { line, factor, df } = fitLine(doses, effects, standardErrors, interval);
  const lowest = doses.reduce((a, b) => Math.min(a, b));
  const highest = doses.reduce((a, b) => Math.max(a, b));
  return at.map((dose) => {
    const estimate = line.estimateAt(dose);
    const reach = criticalValue(confidence, df) * Math.sqrt(factor * line.varianceAt(dose));
    const inside = atLeast(dose, lowest) && atMost(dose, highest);
    return { dose, estimate, low: estimate - reach, high: estimate + reach, inside };
  });
}

interface FittedLine extends Scatter {
  readonly line: LineFit;
  readonly between: number;
}

function fitLine(
  doses: readonly number[],
  effects: readonly number[],
  standardErrors: readonly number[],
  interval: PoolInterval,
): FittedLine {
  requireSameLength("doses", doses, "effects", effects);
  requireStudies(effects, standardErrors);
  doses.forEach((dose, i) => {
    requireNumber(`value ${i + 1} of doses`, dose);
  });
  if (effects.length < 3) {
    throw new NoAnswer(`found ${effects.length} studies; expected at least 3`);
  }
  const [first = 0] = doses;
  if (doses.every((dose) => sameTo(dose, first) || Math.abs(dose - first) < SMALLEST)) {
    throw new NoAnswer("all studies have the same dose; expected at least 2 different ones");
  }

  const variances = standardErrors.map((error) => error ** 2);
  const model = lineModel(doses, effects);
  const between = remlVariance(model, variances);
  const weights = precisions(variances, between);
  return { line: model.fit(weights), between, ...scatterFactor(model, weights, interval) };
}
