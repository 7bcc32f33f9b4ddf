import { chiSquareUpperTail } from "./chiSquare";
import { normalCdf } from "./normal";

/** No normal value that matters lies further out. */
const NORMAL_REACH = 9;
/** Steps this fine make the trapezoidal sum of a bell-shaped curve exact to rounding. */
const STEPS_PER_WIDTH = 2;
/** The logarithm of a density that adds nothing. */
const NEGLIGIBLE = -42;

/**
 * The noncentral t distribution: the chance that (Z + ncp) / S stays below `t`, where Z is standard normal
 * and S an independent SD estimate on `df` degrees of freedom, √(chi-square / df). It gives the power of a
 * t test when there is a true difference.
 *
 * The definition is a single integral, and the trapezoidal rule converges so fast on such bell-shaped
 * curves (Trefethen and Weideman 2014, SIAM Rev 56:385-458) that it is summed as it stands, over whichever
 * of the two variables is the smooth one. Unlike series (Lenth 1989, Appl Stat 38:185-189) it keeps its
 * precision at any `ncp`.
 *
 * @param t - A value of t.
 * @param df - Degrees of freedom, above 0; fractions are allowed.
 * @param ncp - The noncentrality, the true difference in standard errors.
 * @returns The chance, from 0 to 1.
 */
export function noncentralTCdf(t: number, df: number, ncp: number): number {
  if (ncp < 0) return 1 - noncentralTCdf(-t, df, -ncp);
  if (isFar(df, ncp)) return t > 0 ? overNormal(t, df, ncp) : 0;
  return overSpread(df, ncp, (s) => normalCdf(t * s - ncp));
}

/** The chance of a value beyond `limit`, above 0, on either side of 0; in one sum, for `ncp` of 0 or more. */
export function noncentralTOutside(limit: number, df: number, ncp: number): number {
  if (isFar(df, ncp)) return 1 - overNormal(limit, df, ncp);
  return overSpread(df, ncp, (s) => normalCdf(ncp - limit * s) + normalCdf(-limit * s - ncp));
}

/** Whether `ncp` is so large that no value falls below 0, and the mean over Z is the smoother one. */
function isFar(df: number, ncp: number): boolean {
  return ncp > NORMAL_REACH && ncp * ncp > 2 * df;
}

/** The mean of a chance over the density of S, by v = ln s. The density sums to 1, which scales it. */
function overSpread(df: number, ncp: number, chanceAt: (s: number) => number): number {
  const width = 1 / Math.sqrt(2 * df + ncp * ncp);
  const step = Math.min(width / STEPS_PER_WIDTH, 0.1);
  const logDensity = (v: number): number => df * (v - Math.expm1(2 * v) / 2);
  let sum = chanceAt(1);
  let weights = 1;
  for (const direction of [step, -step]) {
    for (let v = direction; logDensity(v) > NEGLIGIBLE; v += direction) {
      const density = Math.exp(logDensity(v));
      sum += density * chanceAt(Math.exp(v));
      weights += density;
    }
  }
  return Math.min(1, sum / weights);
}

/** The mean of P(S > (z + ncp) / t) over the density of Z; for t above 0. */
function overNormal(t: number, df: number, ncp: number): number {
  let sum = 0;
  let weights = 0;
  for (let z = -NORMAL_REACH; z <= NORMAL_REACH; z += 0.05) {
    const s = (z + ncp) / t;
    const density = Math.exp((-z * z) / 2);
    sum += density * chiSquareUpperTail(df * s * s, df);
    weights += density;
  }
  return Math.min(1, sum / weights);
}
