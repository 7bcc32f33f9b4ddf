import type {
  LevelVariances,
  Observation,
  SlopePrior,
} from "../../../src/core/statistics/levelRegression";

/** What an observer of several levels is to learn from. */
export interface DenseModel {
  readonly times: readonly number[];
  readonly observations: readonly Observation[];
  readonly slopes: readonly SlopePrior[];
}

/**
 * The regression about a wandering level written out whole: all observations as one normal distribution with its full
 * covariance matrix, the first level flat, and none of the filter's recursions nor sums by time. Slow, and another way
 * to the same numbers.
 */
export function denseFit(
  { times, observations, slopes }: DenseModel,
  { walk, noise }: LevelVariances,
) {
  const n = observations.length;
  const ones = observations.map(() => 1);
  const values = observations.map(({ value }) => value);
  const elapsed = times.map((time) => time - times[0]);
  /** What a slope that is part of the level adds to it at each time. */
  const inLevel = slopes.map(({ inLevel }, s) =>
    times.map((_, place) =>
      inLevel ? observations.find((one) => one.place === place)!.columns[s] : 0,
    ),
  );
  const levelCovariance = times.map((_, i) =>
    times.map(
      (_, j) =>
        walk * Math.min(elapsed[i], elapsed[j]) +
        slopes.reduce((sum, { sd }, s) => sum + sd * sd * inLevel[s][i] * inLevel[s][j], 0),
    ),
  );
  const covariance = observations.map((a, i) =>
    observations.map((b, j) => {
      const leaning = slopes.reduce(
        (sum, { sd }, s) => sum + sd * sd * a.columns[s] * b.columns[s],
        0,
      );
      const shared = a.place === b.place ? noise : 0;
      const own = i === j ? a.variance : 0;
      return walk * Math.min(elapsed[a.place], elapsed[b.place]) + leaning + shared + own;
    }),
  );

  const { solution: weightsOfValues, logDeterminant } = solve(covariance, values);
  const weightsOfOnes = solve(covariance, ones).solution;
  const information = dot(ones, weightsOfOnes);
  const constant = dot(ones, weightsOfValues) / information;
  const residual = values.map((value) => value - constant);
  const pulled = solve(covariance, residual).solution;
  const logLikelihood = -(logDeterminant + Math.log(information) + dot(residual, pulled)) / 2;

  const ties = times.map((_, i) => observations.map(({ place }) => levelCovariance[i][place]));
  const solvedTies = ties.map((tie) => solve(covariance, tie).solution);
  const levels = ties.map((tie) => constant + dot(tie, pulled));
  const flat = ties.map((tie) => 1 - dot(tie, weightsOfOnes));
  const levelsCovariance = times.map((_, i) =>
    times.map(
      (_, j) =>
        levelCovariance[i][j] - dot(ties[i], solvedTies[j]) + (flat[i] * flat[j]) / information,
    ),
  );
  const slopeMeans = slopes.map(
    ({ sd }, s) =>
      sd *
      sd *
      dot(
        observations.map(({ columns }) => columns[s]),
        pulled,
      ),
  );
  return { n, logLikelihood, levels, covariance: levelsCovariance, slopes: slopeMeans };
}

const dot = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, value, i) => sum + value * b[i], 0);

/** Gaussian elimination with pivots, for a matrix that is symmetric and positive. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]) {
  const rows = matrix.map((row, i) => [...row, right[i]]);
  const n = rows.length;
  let logDeterminant = 0;
  for (let k = 0; k < n; k++) {
    const pivot = rows.slice(k).reduce((a, b) => (Math.abs(b[k]) > Math.abs(a[k]) ? b : a));
    const at = rows.indexOf(pivot);
    [rows[k], rows[at]] = [rows[at], rows[k]];
    logDeterminant += Math.log(Math.abs(pivot[k]));
    for (const row of rows) {
      if (row === pivot) continue;
      const share = row[k] / pivot[k];
      for (let j = k; j <= n; j++) row[j] -= share * pivot[j];
    }
  }
  return { solution: rows.map((row, i) => row[n] / row[i]), logDeterminant };
}
