import { BadInput } from "../problem";
import { normalCdf, normalQuantile } from "./normal";
import { studentCdf, studentUpperQuantile } from "./student";

/** Refuses a probability that is not strictly between 0 and 1. */
export function requireProbability(name: string, value: number): void {
  if (!(value > 0 && value < 1)) {
    throw new BadInput(`${name} is ${value}; expected above 0 and below 1`);
  }
}

function requireDf(df: number): void {
  if (!(df > 0)) throw new BadInput(`df is ${df}; expected above 0`);
}

/**
 * How likely a statistic at least this far from 0, on either side, is by chance alone: Student's t on `df`
 * degrees of freedom, or normal where `df` is not given.
 */
export function twoSidedP(statistic: number, df?: number): number {
  const tail = -Math.abs(statistic);
  if (df === undefined) return 2 * normalCdf(tail);
  requireDf(df);
  return 2 * studentCdf(tail, df);
}

/** As `twoSidedP`, on one side: the chance of a value above the statistic, exact far into the tail. */
export function upperP(statistic: number, df?: number): number {
  if (df === undefined) return normalCdf(-statistic);
  requireDf(df);
  return studentCdf(-statistic, df);
}

interface Multiplier {
  readonly confidence: number;
  readonly df: number | undefined;
  readonly value: number;
}

/** The last multiplier found: a formula down a whole column asks for the same one in every row. */
let last: Multiplier = { confidence: NaN, df: undefined, value: NaN };

/**
 * How many standard errors a two-sided interval reaches each way: 1.96 at 95% for the normal, more for
 * Student's t on `df` degrees of freedom.
 */
export function criticalValue(confidence: number, df?: number): number {
  requireProbability("confidence", confidence);
  if (df !== undefined) requireDf(df);
  if (confidence !== last.confidence || df !== last.df) {
    const tail = (1 - confidence) / 2;
    const value = df === undefined ? -normalQuantile(tail) : studentUpperQuantile(tail, df);
    last = { confidence, df, value };
  }
  return last.value;
}
