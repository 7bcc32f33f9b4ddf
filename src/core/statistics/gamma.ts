import gammaln from "@stdlib/math-base-special-gammaln";
import { NoAnswer } from "../problem";

/** The natural logarithm of the gamma function, for x above 0. */
export function logGamma(x: number): number {
  return gammaln(x);
}

/** From here on the asymptotic series is exact to rounding, where differences of logarithms lose digits. */
const MANY = 1000;

/**
 * Hedges' small-sample correction J, exact: an effect size in units of an SD estimated on `df` degrees of
 * freedom is too large on average, and J times it is not.
 *
 * Source: Hedges 1981, J Educ Stat 6:107-128.
 *
 * @param df - Degrees of freedom, above 0; fractions are allowed.
 * @returns A factor below 1.
 * @throws NoAnswer where `df` is not above 1.
 */
export function hedgesCorrection(df: number): number {
  if (df <= 1) throw new NoAnswer("an effect size needs an SD on at least 2 degrees of freedom");
  if (df < MANY) {
    return Math.exp(gammaln(df / 2) - Math.log(df / 2) / 2 - gammaln((df - 1) / 2));
  }
  const x = (df - 1) / 2;
  const series = 1 - 1 / (8 * x) + 1 / (128 * x ** 2) + 5 / (1024 * x ** 3);
  return Math.sqrt((df - 1) / df) * series;
}
