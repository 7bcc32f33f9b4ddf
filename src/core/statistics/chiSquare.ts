import { findRootNear } from "./findRoot";
import { gammaShares } from "./incompleteGamma";
import { normalQuantile } from "./normal";

/**
 * The chance of a chi-square value below `x`, exact far into the tail.
 *
 * Source: common knowledge.
 *
 * @param x - A value, 0 or more.
 * @param df - Degrees of freedom, above 0; fractions are allowed.
 * @returns The chance, from 0 to 1.
 */
export function chiSquareCdf(x: number, df: number): number {
  return x <= 0 ? 0 : gammaShares(df / 2, x / 2).lower;
}

/** The chance of a chi-square value above `x`, exact far into the tail. */
export function chiSquareUpperTail(x: number, df: number): number {
  if (x === Infinity) return 0;
  return x <= 0 ? 1 : gammaShares(df / 2, x / 2).upper;
}

/**
 * The value that a chi-square on `df` degrees of freedom stays below with chance `p`. The search starts
 * from the cube-root approximation of Wilson and Hilferty 1931, Proc Natl Acad Sci 17:684-688.
 *
 * @param p - A chance, above 0 and below 1.
 * @param df - Degrees of freedom, above 0; fractions are allowed.
 * @returns The value.
 */
export function chiSquareQuantile(p: number, df: number): number {
  const ninth = 2 / (9 * df);
  const root = 1 - ninth + normalQuantile(p) * Math.sqrt(ninth);
  const guess = Math.log(df * Math.max(root, 0.01) ** 3);
  const excess =
    p < 0.5
      ? (u: number) => Math.log(chiSquareCdf(Math.exp(u), df) / p)
      : (u: number) => Math.log((1 - p) / chiSquareUpperTail(Math.exp(u), df));
  return Math.exp(findRootNear(excess, guess));
}
