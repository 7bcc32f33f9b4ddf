import { NoAnswer } from "../problem";
import { zip } from "../zip";

/** The sum of the values. */
export function sum(values: readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

/**
 * The arithmetic mean. Summed twice, the second time about the first result, so that rounding cancels.
 *
 * Source: common knowledge.
 *
 * @param values - The values, in any one unit.
 * @returns The mean, in the values' unit.
 * @throws NoAnswer where there are no values.
 */
export function mean(values: readonly number[]): number {
  if (values.length === 0) throw new NoAnswer("there are no values to average");
  const rough = sum(values) / values.length;
  let rest = 0;
  for (const value of values) rest += value - rough;
  return rough + rest / values.length;
}

/** Deviations smaller than this part of the largest value are rounding, not spread. */
const DUST = 1e-14;

/**
 * The sum of squares of deviations of `values` from whatever was fitted to them; exactly 0 where the fit is
 * perfect, so that no test divides by dust.
 */
export function sumOfSquaredDeviations(
  deviations: readonly number[],
  values: readonly number[],
): number {
  const dust = DUST * largest(values);
  let squares = 0;
  for (const deviation of deviations) squares += deviation * deviation;
  return largest(deviations) <= dust ? 0 : squares;
}

function largest(values: readonly number[]): number {
  let size = 0;
  for (const value of values) size = Math.max(size, Math.abs(value));
  return size;
}

/** The sum of squared deviations from the mean; exactly 0 where all values are the same. */
export function sumOfSquares(values: readonly number[]): number {
  return sumOfSquaredDeviations(deviations(values), values);
}

/** How far each value lies from the mean. */
export function deviations(values: readonly number[]): number[] {
  const centre = mean(values);
  return values.map((value) => value - centre);
}

/**
 * The sample variance: squared deviations over n − 1.
 *
 * Source: common knowledge.
 *
 * @param values - The values, in any one unit.
 * @returns The variance, in the squared unit.
 * @throws NoAnswer where there are fewer than 2 values.
 */
export function variance(values: readonly number[]): number {
  if (values.length < 2) {
    throw new NoAnswer(`a spread needs at least 2 values, and there are ${values.length}`);
  }
  return sumOfSquares(values) / (values.length - 1);
}

/**
 * The sample standard deviation (n − 1).
 *
 * Source: common knowledge.
 *
 * @param values - The values, in any one unit.
 * @returns The SD, in the values' unit.
 * @throws NoAnswer where there are fewer than 2 values.
 */
export function standardDeviation(values: readonly number[]): number {
  return Math.sqrt(variance(values));
}

/** The sum of products of deviations from the two means. */
export function sumOfProducts(x: readonly number[], y: readonly number[]): number {
  const centreX = mean(x);
  const centreY = mean(y);
  let products = 0;
  for (const [one, other] of zip(x, y)) products += (one - centreX) * (other - centreY);
  return products;
}

/**
 * Pearson's correlation of two columns of equal length.
 *
 * Source: common knowledge.
 *
 * @param x - A column of numbers.
 * @param y - The other, as long.
 * @returns From −1 to 1.
 * @throws NoAnswer where a column does not differ.
 */
export function correlation(x: readonly number[], y: readonly number[]): number {
  return correlationFrom(sumOfProducts(x, y), sumOfSquares(x), sumOfSquares(y));
}

/** Correlations closer to 1 than this are 1. */
const PERFECT = 1e-12;

/**
 * The correlation from its three sums, which may be summed over several groups first: the correlation
 * within the groups. A perfect one is exactly 1 or −1.
 */
export function correlationFrom(products: number, squaresX: number, squaresY: number): number {
  if (squaresX === 0 || squaresY === 0) {
    throw new NoAnswer("a correlation needs values that differ");
  }
  const r = products / (Math.sqrt(squaresX) * Math.sqrt(squaresY));
  return Math.abs(r) > 1 - PERFECT ? Math.sign(r) : r;
}
