import betainc from "@stdlib/math-base-special-betainc";
import { findRootNear } from "./findRoot";

/**
 * The chance of an F value below `x`, on `df1` and `df2` degrees of freedom (fractions allowed).
 *
 * Source: common knowledge.
 *
 * @param x - A value, 0 or more.
 * @param df1 - Degrees of freedom above the line.
 * @param df2 - Those below it.
 * @returns The chance, from 0 to 1.
 */
export function fCdf(x: number, df1: number, df2: number): number {
  return x <= 0 ? 0 : betaSide(x, df1, df2, false);
}

/** The chance of an F value above `x`, exact far into the tail. */
export function fUpperTail(x: number, df1: number, df2: number): number {
  return x <= 0 ? 1 : betaSide(x, df1, df2, true);
}

/** One side of the incomplete beta function, always from the argument that is the smaller part of 1. */
function betaSide(x: number, df1: number, df2: number, upper: boolean): number {
  const above = df1 * x;
  const whole = above + df2;
  return above < df2
    ? betainc(above / whole, df1 / 2, df2 / 2, true, upper)
    : betainc(df2 / whole, df2 / 2, df1 / 2, true, !upper);
}

/**
 * The value that an F on `df1` and `df2` degrees of freedom stays below with chance `p`.
 *
 * Source: common knowledge.
 *
 * @param p - A chance, above 0 and below 1.
 * @param df1 - Degrees of freedom above the line.
 * @param df2 - Those below it.
 * @returns The value.
 */
export function fQuantile(p: number, df1: number, df2: number): number {
  const excess =
    p < 0.5
      ? (u: number) => Math.log(fCdf(Math.exp(u), df1, df2) / p)
      : (u: number) => Math.log((1 - p) / fUpperTail(Math.exp(u), df1, df2));
  return Math.exp(findRootNear(excess, 0));
}
