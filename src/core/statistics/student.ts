import betainc from "@stdlib/math-base-special-betainc";
import { NoAnswer } from "../problem";
import { findRootNear } from "./findRoot";
import { logGamma } from "./gamma";
import { normalCdf, normalQuantile } from "./normal";

/** From here on t and normal agree to more digits than a sheet shows. */
const AS_GOOD_AS_NORMAL = 1e10;
/** From here on, in root df, the tail is its first term to all digits, and its square may overflow. */
const FAR_OUT = 1e20;

/**
 * The chance of a t of this size or larger, on one side (t at or above 0), through the incomplete beta
 * function. Computed as a tail, never as 1 minus something, so that 1e-25 comes out as 1e-25.
 */
function upperTail(t: number, df: number): number {
  if (df > AS_GOOD_AS_NORMAL) return normalCdf(-t);
  // Cauchy's distribution has a closed form (and the library's incomplete beta loses digits at ½ and ½).
  if (df === 1) return Math.atan2(1, t) / Math.PI;
  if (t > FAR_OUT * Math.sqrt(df)) return Math.exp(logFarTail(Math.log(t), df));
  const square = t * t;
  return square > df
    ? betainc(df / (df + square), df / 2, 0.5) / 2
    : betainc(square / (df + square), 0.5, df / 2, true, true) / 2;
}

/** The first term of the tail, by logarithms: x^a / (2 a B(a, ½)) with x = df / t² and a = df / 2. */
function logFarTail(logT: number, df: number): number {
  const a = df / 2;
  const logBeta = logGamma(a) + logGamma(0.5) - logGamma(a + 0.5);
  return a * (Math.log(df) - 2 * logT) - Math.log(df) - logBeta;
}

/** Student's t distribution: the chance of a value below `t`. Exact far into the lower tail. */
export function studentCdf(t: number, df: number): number {
  return t < 0 ? upperTail(-t, df) : 1 - upperTail(t, df);
}

/** The t that is exceeded with chance `tail`, a chance below one half. */
export function studentUpperQuantile(tail: number, df: number): number {
  const logTail = Math.log(tail);
  const farOut = Math.log(FAR_OUT) + Math.log(df) / 2;
  const beyond = (logFarTail(farOut, df) - logTail) / df;
  if (beyond > 0) return finiteExp(farOut + beyond, tail, df);
  const guess = Math.log(-normalQuantile(tail));
  return Math.exp(findRootNear((u) => logTail - Math.log(upperTail(Math.exp(u), df)), guess));
}

/** Student's t on half a degree of freedom exceeds any number a computer can hold with chance 1e-155. */
function finiteExp(logT: number, tail: number, df: number): number {
  const t = Math.exp(logT);
  if (t < Infinity) return t;
  throw new NoAnswer(`the t exceeded with chance ${tail} on ${df} degrees of freedom is too large`);
}

/** The t that a Student value on `df` degrees of freedom stays below with chance `p`. */
export function studentQuantile(p: number, df: number): number {
  if (p === 0.5) return 0;
  return p < 0.5 ? -studentUpperQuantile(p, df) : studentUpperQuantile(1 - p, df);
}
