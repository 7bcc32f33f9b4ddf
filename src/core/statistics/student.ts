import betainc from "@stdlib/math-base-special-betainc";
import { NoAnswer } from "../problem";
import { refineRoot } from "./findRoot";
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

/**
 * Student's t distribution: the chance of a value below `t`. Exact far into the lower tail.
 *
 * Source: common knowledge.
 *
 * @param t - A value of t.
 * @param df - Degrees of freedom, above 0; fractions are allowed.
 * @returns The chance, from 0 to 1.
 */
export function studentCdf(t: number, df: number): number {
  return t < 0 ? upperTail(-t, df) : 1 - upperTail(t, df);
}

/** The t that is exceeded with chance `tail`, a chance below one half. */
export function studentUpperQuantile(tail: number, df: number): number {
  const logTail = Math.log(tail);
  const farOut = Math.log(FAR_OUT) + Math.log(df) / 2;
  const beyond = (logFarTail(farOut, df) - logTail) / df;
  if (beyond > 0) return finiteExp(farOut + beyond, tail, df);
  const guess = nearUpperQuantile(tail, df);
  const steepness = (guess * normalSteepness(guess) * df) / (df + guess * guess);
  const excess = (u: number) => logTail - Math.log(upperTail(Math.exp(u), df));
  return Math.exp(refineRoot(excess, Math.log(guess), steepness));
}

/** Nearly the normal density as a share of its tail (Birnbaum 1942, Ann Math Stat 13:245-246; Sampford 1953). */
const normalSteepness = (z: number) => (3 * z + Math.sqrt(z * z + 8)) / 4;

/**
 * The same to five digits or so, without a search: where to start one. On fewer degrees of freedom than one,
 * the normal distribution's value.
 *
 * Source: Hill 1970, Commun ACM 13:619-620 (algorithm 396).
 */
function nearUpperQuantile(tail: number, df: number): number {
  const z = -normalQuantile(tail);
  if (df < 1) return z;
  const a = 1 / (df - 0.5);
  const b = 48 / (a * a);
  const c = ((20700 * (a / b) - 98) * a - 16) * a + 96.36;
  const d = ((94.5 / (b + c) - 3) / b + 1) * Math.sqrt((a * Math.PI) / 2) * df;
  const far = (2 * d * tail) ** (2 / df);
  if (far <= 0.05 + a) {
    const inner = 1 / (((df + 6) / (df * far) - 0.089 * d - 0.822) * (df + 2) * 3);
    const square = ((inner + 0.5 / (df + 4)) * far - 1) * ((df + 1) / (df + 2)) + 1 / far;
    return Math.sqrt(df * square);
  }
  const few = df < 5 ? 0.3 * (df - 4.5) * (z + 0.6) : 0;
  const e = (((0.05 * d * z - 5) * z - 7) * z - 2) * z + b + c + few;
  const y = z * z;
  const w = (((((0.4 * y + 6.3) * y + 36) * y + 94.5) / e - y - 3) / b + 1) * z;
  return Math.sqrt(df * Math.expm1(a * w * w));
}

/** Student's t on half a degree of freedom exceeds any number a computer can hold with chance 1e-155. */
function finiteExp(logT: number, tail: number, df: number): number {
  const t = Math.exp(logT);
  if (t < Infinity) return t;
  throw new NoAnswer(`the t exceeded with chance ${tail} on ${df} degrees of freedom is too large`);
}

/**
 * The t that a Student value on `df` degrees of freedom stays below with chance `p`.
 *
 * Source: common knowledge.
 *
 * @param p - A chance, above 0 and below 1.
 * @param df - Degrees of freedom, above 0; fractions are allowed.
 * @returns The value t.
 * @throws NoAnswer where it is too large for a number.
 */
export function studentQuantile(p: number, df: number): number {
  if (p === 0.5) return 0;
  return p < 0.5 ? -studentUpperQuantile(p, df) : studentUpperQuantile(1 - p, df);
}
