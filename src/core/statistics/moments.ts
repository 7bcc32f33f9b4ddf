import { NoAnswer } from "../problem";

/** The sum of the values. */
export function sum(values: readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

/** The arithmetic mean. Summed twice, the second time about the first result, so that rounding cancels. */
export function mean(values: readonly number[]): number {
  if (values.length === 0) throw new NoAnswer("there are no values to average");
  const rough = sum(values) / values.length;
  let rest = 0;
  for (const value of values) rest += value - rough;
  return rough + rest / values.length;
}

/** Deviations smaller than this part of the largest value are rounding, not spread. */
const DUST = 1e-14;

/** The sum of squared deviations from the mean; exactly 0 where all values are the same. */
export function sumOfSquares(values: readonly number[]): number {
  const centre = mean(values);
  let squares = 0;
  let largest = 0;
  let widest = 0;
  for (const value of values) {
    const deviation = value - centre;
    squares += deviation * deviation;
    largest = Math.max(largest, Math.abs(value));
    widest = Math.max(widest, Math.abs(deviation));
  }
  return widest <= DUST * largest ? 0 : squares;
}

/** The sample variance: squared deviations over n − 1. */
export function variance(values: readonly number[]): number {
  if (values.length < 2) {
    throw new NoAnswer(`a spread needs at least 2 values, and there are ${values.length}`);
  }
  return sumOfSquares(values) / (values.length - 1);
}

/** The sample standard deviation (n − 1). */
export function standardDeviation(values: readonly number[]): number {
  return Math.sqrt(variance(values));
}

/** The sum of products of deviations from the two means. */
export function sumOfProducts(x: readonly number[], y: readonly number[]): number {
  const centreX = mean(x);
  const centreY = mean(y);
  let products = 0;
  for (let i = 0; i < x.length; i++) products += (x[i]! - centreX) * (y[i]! - centreY);
  return products;
}

/** Pearson's correlation of two columns of equal length. */
export function correlation(x: readonly number[], y: readonly number[]): number {
  const spread = Math.sqrt(sumOfSquares(x)) * Math.sqrt(sumOfSquares(y));
  if (spread === 0) throw new NoAnswer("a correlation needs values that differ");
  return Math.max(-1, Math.min(1, sumOfProducts(x, y) / spread));
}
