import type { LevelSeries, LevelVariances } from "../../../src/core/statistics/localLevel";

/**
 * The local-level model written out whole, as one normal distribution with its full covariance matrix and
 * none of the filter's recursions: slow, and another way to the same numbers.
 */
export function denseLogLikelihood(series: LevelSeries, variances: LevelVariances): number {
  // Given the first value and a flat prior, later values scatter about it: the first one's own error is in all.
  const { times, values, knownVariances } = series;
  const own = (i: number) => knownVariances[i]! + variances.noise;
  const later = values.slice(1).map((_, i) => i + 1);
  const covariance = later.map((i) =>
    later.map(
      (j) =>
        variances.walk * (Math.min(times[i]!, times[j]!) - times[0]!) +
        own(0) +
        (i === j ? own(i) : 0),
    ),
  );
  const surprise = later.map((i) => values[i]! - values[0]!);
  const { solution, logDeterminant } = solve(covariance, surprise);
  const distance = surprise.reduce((sum, value, i) => sum + value * solution[i]!, 0);
  return -(later.length * Math.log(2 * Math.PI) + logDeterminant + distance) / 2;
}

/** Means and covariances of all levels given all values, from the precision matrix of the levels. */
export function denseLevels(series: LevelSeries, variances: LevelVariances) {
  const { times, values, knownVariances } = series;
  const n = values.length;
  const precision = values.map(() => new Array<number>(n).fill(0));
  values.forEach((_, i) => {
    precision[i]![i]! += 1 / (knownVariances[i]! + variances.noise);
    if (i === 0) return;
    const tie = 1 / (variances.walk * (times[i]! - times[i - 1]!));
    precision[i]![i]! += tie;
    precision[i - 1]![i - 1]! += tie;
    precision[i]![i - 1]! -= tie;
    precision[i - 1]![i]! -= tie;
  });
  const pull = values.map((value, i) => value / (knownVariances[i]! + variances.noise));
  const unit = (at: number) => values.map((_, i) => (i === at ? 1 : 0));
  return {
    means: solve(precision, pull).solution,
    covariance: values.map((_, i) => solve(precision, unit(i)).solution),
  };
}

/** Gaussian elimination with pivots, for a matrix that is symmetric and positive. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]) {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  const n = rows.length;
  let logDeterminant = 0;
  for (let k = 0; k < n; k++) {
    const pivot = rows.slice(k).reduce((a, b) => (Math.abs(b[k]!) > Math.abs(a[k]!) ? b : a));
    const at = rows.indexOf(pivot);
    [rows[k], rows[at]] = [rows[at]!, rows[k]!];
    logDeterminant += Math.log(Math.abs(pivot[k]!));
    for (const row of rows) {
      if (row === pivot) continue;
      const share = row[k]! / pivot[k]!;
      for (let j = k; j <= n; j++) row[j]! -= share * pivot[j]!;
    }
  }
  return { solution: rows.map((row, i) => row[n]! / row[i]!), logDeterminant };
}
