import type {
  LevelVariances,
  Observation,
  SlopePrior,
} from "../../../src/core/statistics/levelRegression";
import { cellAt, elementAt } from "../../present";

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
  const first = elementAt(times, 0);
  /** How far the level has wandered together with itself by two times. */
  const walked = (i: number, j: number) =>
    walk * (Math.min(elementAt(times, i), elementAt(times, j)) - first);
  /** What a slope that is part of the level adds to it at each time. */
  const inLevel = slopes.map(({ inLevel }, s) =>
    times.map((_, place) =>
      inLevel ? elementAt(observations.find((one) => one.place === place)!.columns, s) : 0,
    ),
  );
  const levelCovariance = times.map((_, i) =>
    times.map(
      (_, j) =>
        walked(i, j) +
        slopes.reduce(
          (sum, { sd }, s) => sum + sd * sd * cellAt(inLevel, s, i) * cellAt(inLevel, s, j),
          0,
        ),
    ),
  );
  const covariance = observations.map((a, i) =>
    observations.map((b, j) => {
      const leaning = slopes.reduce(
        (sum, { sd }, s) => sum + sd * sd * elementAt(a.columns, s) * elementAt(b.columns, s),
        0,
      );
      const shared = a.place === b.place ? noise : 0;
      const own = i === j ? a.variance : 0;
      return walked(a.place, b.place) + leaning + shared + own;
    }),
  );

  /** How far each level goes together with each observation. */
  const ties = levelCovariance.map((row) => observations.map(({ place }) => elementAt(row, place)));
  const { solutions, logDeterminant } = solve(covariance, [values, ones, ...ties]);
  const weightsOfValues = elementAt(solutions, 0);
  const weightsOfOnes = elementAt(solutions, 1);
  const information = dot(ones, weightsOfOnes);
  const constant = dot(ones, weightsOfValues) / information;
  const residual = values.map((value) => value - constant);
  const pulled = weightsOfValues.map(
    (weight, i) => weight - constant * elementAt(weightsOfOnes, i),
  );
  const logLikelihood = -(logDeterminant + Math.log(information) + dot(residual, pulled)) / 2;

  const tied = levelCovariance.map((row, place) => {
    const tie = elementAt(ties, place);
    const solved = elementAt(solutions, place + 2);
    return { row, tie, solved, flat: 1 - dot(tie, weightsOfOnes) };
  });
  const levels = tied.map(({ tie }) => constant + dot(tie, pulled));
  const levelsCovariance = tied.map((one) =>
    tied.map(
      ({ solved, flat }, j) =>
        elementAt(one.row, j) - dot(one.tie, solved) + (one.flat * flat) / information,
    ),
  );
  const slopeMeans = slopes.map(
    ({ sd }, s) =>
      sd *
      sd *
      dot(
        observations.map(({ columns }) => elementAt(columns, s)),
        pulled,
      ),
  );
  return { n, logLikelihood, levels, covariance: levelsCovariance, slopes: slopeMeans };
}

const dot = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, value, i) => sum + value * elementAt(b, i), 0);

/** Gaussian elimination with pivots, for a matrix that is symmetric and positive and several right sides. */
function solve(matrix: readonly (readonly number[])[], rights: readonly (readonly number[])[]) {
  const n = matrix.length;
  const rows = matrix.map((row, i) =>
    Float64Array.of(...row, ...rights.map((right) => elementAt(right, i))),
  );
  let logDeterminant = 0;
  for (let k = 0; k < n; k++) {
    const size = (row: Float64Array) => Math.abs(elementAt(row, k));
    const pivot = rows.slice(k).reduce((a, b) => (size(b) > size(a) ? b : a));
    rows[rows.indexOf(pivot)] = elementAt(rows, k);
    rows[k] = pivot;
    logDeterminant += Math.log(size(pivot));
    for (const row of rows) {
      if (row === pivot) continue;
      const share = elementAt(row, k) / elementAt(pivot, k);
      for (let j = k; j < row.length; j++) row[j]! -= share * pivot[j]!;
    }
  }
  const solutions = rights.map((_, right) =>
    rows.map((row, i) => elementAt(row, n + right) / elementAt(row, i)),
  );
  return { solutions, logDeterminant };
}
