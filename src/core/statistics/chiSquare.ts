import gammainc from "@stdlib/math-base-special-gammainc";
import { findRootNear } from "./findRoot";
import { normalQuantile } from "./normal";

/** The chance of a chi-square value below `x`. */
export function chiSquareCdf(x: number, df: number): number {
  return x <= 0 ? 0 : gammainc(x / 2, df / 2, true, false);
}

/** The chance of a chi-square value above `x`, exact far into the tail. */
export function chiSquareUpperTail(x: number, df: number): number {
  if (x === Infinity) return 0;
  return x <= 0 ? 1 : gammainc(x / 2, df / 2, true, true);
}

/**
 * The value that a chi-square on `df` degrees of freedom stays below with chance `p`. The search starts
 * from the cube-root approximation of Wilson and Hilferty 1931, Proc Natl Acad Sci 17:684-688.
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
