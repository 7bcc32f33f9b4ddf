import { BadInput, NoAnswer } from "../problem";
import { deviations, mean, sumOfSquaredDeviations } from "../statistics/moments";
import { transposed } from "../transposed";
import { zip } from "../zip";

/** Mean squares of a table of athletes (rows) by trials (columns), one score a cell. */
export interface TwoWayAnova {
  readonly athletes: number;
  readonly trials: number;
  readonly grandMean: number;
  /** Between athletes, on athletes − 1 degrees of freedom. */
  readonly betweenAthletes: number;
  /** Between trials, on trials − 1. */
  readonly betweenTrials: number;
  /** What neither explains, on the product of the two. */
  readonly error: number;
  readonly errorDf: number;
}

/** Two-way analysis of variance without replication: athletes, trials and what is left over. */
export function twoWayAnova(rows: readonly (readonly number[])[]): TwoWayAnova {
  const n = rows.length;
  const k = rows[0]?.length ?? 0;
  if (n < 2) throw new NoAnswer(`expected at least 2 athletes with every trial; found ${n}`);
  if (k < 2) throw new BadInput(`expected at least 2 trials, a column each; found ${k}`);

  const scores = rows.flat();
  const grandMean = mean(scores);
  const byAthlete = deviations(rows.map((row) => mean(row)));
  const byTrial = deviations(transposed(rows).map((trial) => mean(trial)));
  const left = zip(rows, byAthlete).flatMap(([row, athlete]) =>
    zip(row, byTrial).map(([score, trial]) => score - grandMean - athlete - trial),
  );
  const errorDf = (n - 1) * (k - 1);
  return {
    athletes: n,
    trials: k,
    grandMean,
    betweenAthletes: (k * sumOfSquaredDeviations(byAthlete, scores)) / (n - 1),
    betweenTrials: (n * sumOfSquaredDeviations(byTrial, scores)) / (k - 1),
    error: sumOfSquaredDeviations(left, scores) / errorDf,
    errorDf,
  };
}
