import { bilinear, invertPositive } from "./positiveMatrix";

/** One observation of a wandering level. There may be several at one time. */
export interface Observation {
  /** Which of the times it was made at. */
  readonly place: number;
  readonly value: number;
  /** What the value leans on: a number for each slope. */
  readonly columns: readonly number[];
  /** The variance of its own error; above 0 where several share a time. */
  readonly variance: number;
}

/** What is believed of a slope beforehand: normal about 0. */
export interface SlopePrior {
  readonly sd: number;
  /** Whether what the slope explains is part of the level (a drift) or only of what was observed (a bias). */
  readonly inLevel: boolean;
}

/** The two variances of the level model. */
export interface LevelVariances {
  /** Of the level's random walk, for one unit of time. */
  readonly walk: number;
  /** Of the noise that all observations of one time share. */
  readonly noise: number;
}

/** Observations summed up by time, once for all variances that they will be fitted with. */
export interface LevelRegression {
  readonly times: readonly number[];
  /** The values and then each column, averaged at each time by precision. */
  readonly series: readonly (readonly number[])[];
  /** The variance of those averages. */
  readonly variances: readonly number[];
  /** Cross-products of values and columns about their averages, over variance, added up over all times. */
  readonly within: readonly (readonly number[])[];
  readonly slopes: readonly SlopePrior[];
}

/** What the filter makes of a regression with one pair of variances. */
export interface FilteredRegression {
  /**
   * The logarithm of the likelihood, but for a constant that no variance changes. Nothing is assumed about the
   * first level (a flat prior), so the first time alone adds nothing.
   */
  readonly logLikelihood: number;
  /** The slopes, given all observations: means and covariance. */
  readonly slopes: readonly number[];
  readonly slopeCovariance: readonly (readonly number[])[];
  /** Each series as filtered up to each time, and the variance that all of them share. */
  readonly means: readonly (readonly number[])[];
  readonly variances: readonly number[];
}

/** The levels as seen from all observations, worked out for the times that are asked for. */
export interface SmoothedRegression {
  level(i: number): number;
  /** The covariance of the levels at two times. */
  covariance(i: number, j: number): number;
}

/**
 * Sums observations up by time. Averages by precision, with the cross-products about them, tell a normal model as
 * much as the observations themselves.
 */
export function levelRegression(
  times: readonly number[],
  observations: readonly Observation[],
  slopes: readonly SlopePrior[],
): LevelRegression {
  const width = slopes.length + 1;
  const precisions = zeros(times.length);
  const series = Array.from({ length: width }, () => zeros(times.length));
  const rows = observations.map(({ place, variance, value, columns }) => {
    const row = [value, ...columns];
    // A running average, since a precision of a time with one exact observation has no finite value.
    const precision = precisions[place]! + 1 / variance;
    const share = precision === Infinity ? 1 : 1 / variance / precision;
    precisions[place] = precision;
    series.forEach((one, s) => (one[place]! += share * (row[s]! - one[place]!)));
    return { place, variance, row };
  });

  const within = series.map(() => zeros(width));
  for (const { place, variance, row } of rows) {
    const off = row.map((value, s) => value - series[s]![place]!);
    within.forEach((products, s) => {
      const own = off[s]!;
      if (own === 0) return;
      off.forEach((other, r) => (products[r]! += (own * other) / variance));
    });
  }
  return { times, series, variances: precisions.map((precision) => 1 / precision), within, slopes };
}

/**
 * The Kalman filter of a regression about a wandering level (Harvey 1989, Forecasting, Structural Time Series
 * Models and the Kalman Filter, chapters 3 and 7): value = level + what the columns explain + noise of the time +
 * own error, the level a random walk whose variance grows with the time between.
 *
 * Values and columns go through the same filter, and the surprises of the values are then regressed on those of
 * the columns: generalised least squares without its large matrices (Kohn and Ansley 1985, Biometrika 72:694-697).
 */
export function filterRegression(
  { times, series, variances: known, within, slopes }: LevelRegression,
  { walk, noise }: LevelVariances,
): FilteredRegression {
  const width = series.length;
  const products = within.map((row) => [...row]);
  const means = series.map((one) => zeros(one.length));
  const variances = zeros(times.length);
  const surprises = zeros(width);
  means.forEach((mean, s) => (mean[0] = series[s]![0]!));
  variances[0] = known[0]! + noise;
  let logs = 0;
  for (let i = 1; i < times.length; i++) {
    const predicted = variances[i - 1]! + walk * (times[i]! - times[i - 1]!);
    const total = predicted + known[i]! + noise;
    const gain = predicted / total;
    for (let s = 0; s < width; s++) {
      const mean = means[s]!;
      const surprise = series[s]![i]! - mean[i - 1]!;
      surprises[s] = surprise;
      mean[i] = mean[i - 1]! + gain * surprise;
      const row = products[s]!;
      for (let r = 0; r <= s; r++) row[r]! += (surprise * surprises[r]!) / total;
    }
    variances[i] = predicted * (1 - gain);
    logs += Math.log(total);
  }

  const [ofValues = [], ...ofColumns] = products;
  const information = slopes.map(({ sd }, r) =>
    slopes.map((_, s) => {
      const product = ofColumns[Math.max(r, s)]![Math.min(r, s) + 1]!;
      return r === s ? product + 1 / sd ** 2 : product;
    }),
  );
  const pull = ofColumns.map((row) => row[0]!);
  const { inverse, logDeterminant } = invertPositive(information);
  const found = inverse.map((row) => row.reduce((sum, value, r) => sum + value * pull[r]!, 0));
  const explained = found.reduce((sum, slope, r) => sum + slope * pull[r]!, 0);
  return {
    logLikelihood: -(logs + ofValues[0]! - explained + logDeterminant) / 2,
    slopes: found,
    slopeCovariance: inverse,
    means,
    variances,
  };
}

/**
 * The fixed-interval smoother, running back over what the filter found (Rauch, Tung and Striebel 1965, AIAA J
 * 3:1445-1450). Each series is smoothed as if it were the values; a level is then what is left of the smoothed
 * values without what the columns explain of them, and is unsure of the slopes as far as it leans on them.
 */
export function smoothRegression(
  { times, series, slopes }: LevelRegression,
  { walk }: LevelVariances,
  filtered: FilteredRegression,
): SmoothedRegression {
  const end = times.length - 1;
  const smoothed = filtered.means.map((mean) => mean.slice());
  const variances = filtered.variances.slice();
  /** How much of a correction at the next time goes on to this one. */
  const shares = zeros(times.length);
  for (let i = end - 1; i >= 0; i--) {
    const predicted = variances[i]! + walk * (times[i + 1]! - times[i]!);
    const share = predicted > 0 ? variances[i]! / predicted : 1;
    for (const one of smoothed) one[i]! += share * (one[i + 1]! - one[i]!);
    variances[i]! += share * share * (variances[i + 1]! - predicted);
    shares[i] = share;
  }

  const leansOf = (i: number) =>
    slopes.map(({ inLevel }, r) => (inLevel ? series[r + 1]![i]! : 0) - smoothed[r + 1]![i]!);
  const level = (i: number) =>
    leansOf(i).reduce((sum, lean, r) => sum + lean * filtered.slopes[r]!, smoothed[0]![i]!);
  const covariance = (i: number, j: number) => {
    const [first, second] = i < j ? [i, j] : [j, i];
    let walked = variances[second]!;
    for (let k = first; k < second; k++) walked *= shares[k]!;
    return walked + bilinear(leansOf(i), filtered.slopeCovariance, leansOf(j));
  };
  return { level, covariance };
}

/** For a log's few hundred days this is quicker than typed arrays, which are slow to make. */
const zeros = (length: number) => new Array<number>(length).fill(0);
