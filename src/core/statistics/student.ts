import betainc from "@stdlib/math-base-special-betainc";
import { findRootNear } from "./findRoot";
import { normalCdf, normalQuantile } from "./normal";

/** From here on t and normal agree to more digits than a sheet shows. */
const AS_GOOD_AS_NORMAL = 1e10;

/**
 * The chance of a t of this size or larger, on one side (t at or above 0), through the incomplete beta
 * function. Computed as a tail, never as 1 minus something, so that 1e-25 comes out as 1e-25.
 */
function upperTail(t: number, df: number): number {
  if (df > AS_GOOD_AS_NORMAL) return normalCdf(-t);
  const square = t * t;
  return square > df
    ? betainc(df / (df + square), df / 2, 0.5) / 2
    : betainc(square / (df + square), 0.5, df / 2, true, true) / 2;
}

/** Student's t distribution: the chance of a value below `t`. Exact far into the lower tail. */
export function studentCdf(t: number, df: number): number {
  return t < 0 ? upperTail(-t, df) : 1 - upperTail(t, df);
}

/** The t that is exceeded with chance `tail`, a chance below one half. */
export function studentUpperQuantile(tail: number, df: number): number {
  const logTail = Math.log(tail);
  const guess = Math.log(-normalQuantile(tail));
  return Math.exp(findRootNear((u) => logTail - Math.log(upperTail(Math.exp(u), df)), guess));
}

/** The t that a Student value on `df` degrees of freedom stays below with chance `p`. */
export function studentQuantile(p: number, df: number): number {
  if (p === 0.5) return 0;
  return p < 0.5 ? -studentUpperQuantile(p, df) : studentUpperQuantile(1 - p, df);
}
