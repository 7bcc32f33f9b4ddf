import { NoAnswer } from "../problem";

/**
 * Observations of a level that wanders, in order of time. Each has a variance known beforehand (0 where
 * nothing is known); the times may be any distance apart.
 */
export interface LevelSeries {
  readonly times: readonly number[];
  readonly values: readonly number[];
  readonly knownVariances: readonly number[];
}

/** The two variances of the local-level model that the series itself has to tell. */
export interface LevelVariances {
  /** Of the level's random walk, for one unit of time. */
  readonly walk: number;
  /** Of an observation's own noise, on top of its known variance. */
  readonly noise: number;
}

/** The level at each time as seen from some of the observations: its mean and variance. */
export interface Levels {
  readonly means: number[];
  readonly variances: number[];
}

/** The level at each time, as seen from all observations. */
export interface SmoothedLevels extends Levels {
  /** The covariance of the first and the last level, for the variance of the rise between them. */
  readonly firstLastCovariance: number;
}

/**
 * The log-likelihood of the local-level model (Harvey 1989, Forecasting, Structural Time Series Models and
 * the Kalman Filter, chapter 3): value = level + noise, the level a random walk whose variance grows with
 * the time between. Nothing is assumed about the first level (a flat prior), so the first observation only
 * sets the level and adds nothing here.
 *
 * Variances that leave an observation no variance at all have likelihood 0, so −Infinity.
 */
export function levelLogLikelihood(series: LevelSeries, variances: LevelVariances): number {
  const { times, values, knownVariances } = series;
  let mean = values[0]!;
  let variance = knownVariances[0]! + variances.noise;
  let sum = 0;
  for (let i = 1; i < values.length; i++) {
    const predicted = variance + variances.walk * (times[i]! - times[i - 1]!);
    const total = predicted + knownVariances[i]! + variances.noise;
    if (!(total > 0)) return -Infinity;
    const surprise = values[i]! - mean;
    sum += Math.log(total) + (surprise * surprise) / total;
    const gain = predicted / total;
    mean += gain * surprise;
    variance = predicted * (1 - gain);
  }
  return -((values.length - 1) * Math.log(2 * Math.PI) + sum) / 2;
}

/**
 * The Kalman filter: the level at each time as seen from the observations up to that time (Harvey 1989;
 * Durbin and Koopman 2012, Time Series Analysis by State Space Methods, chapter 2).
 */
export function filterLevels(series: LevelSeries, variances: LevelVariances): Levels {
  const { times, values, knownVariances } = series;
  const means = [values[0]!];
  const filtered = [knownVariances[0]! + variances.noise];
  for (let i = 1; i < values.length; i++) {
    const predicted = filtered[i - 1]! + variances.walk * (times[i]! - times[i - 1]!);
    const total = predicted + knownVariances[i]! + variances.noise;
    if (!(total > 0)) throw new NoAnswer("the observations and their level have no variance");
    const gain = predicted / total;
    means.push(means[i - 1]! + gain * (values[i]! - means[i - 1]!));
    filtered.push(predicted * (1 - gain));
  }
  return { means, variances: filtered };
}

/**
 * The fixed-interval smoother: the level at each time as seen from all observations, running back over
 * what the filter found (Rauch, Tung and Striebel 1965, AIAA J 3:1445-1450).
 */
export function smoothLevels(series: LevelSeries, variances: LevelVariances): SmoothedLevels {
  const { means, variances: smoothed } = filterLevels(series, variances);
  const last = means.length - 1;
  let firstLastCovariance = smoothed[last]!;
  for (let i = last - 1; i >= 0; i--) {
    const filtered = smoothed[i]!;
    const gap = series.times[i + 1]! - series.times[i]!;
    const predicted = filtered + variances.walk * gap;
    const gain = predicted > 0 ? filtered / predicted : 1;
    means[i]! += gain * (means[i + 1]! - means[i]!);
    smoothed[i]! += gain * gain * (smoothed[i + 1]! - predicted);
    firstLastCovariance *= gain;
  }
  return { means, variances: smoothed, firstLastCovariance };
}
