import { chiSquareUpperTail } from "./chiSquare";
import { logGamma } from "./gamma";
import { normalCdf } from "./normal";

/** No normal value that matters lies further out. */
const NORMAL_REACH = 9;
/** Steps this fine make the trapezoidal sum of a bell-shaped curve exact to rounding. */
const STEPS_PER_WIDTH = 2;

/**
 * The noncentral t distribution: the chance that (Z + ncp) / S stays below `t`, where Z is standard normal
 * and S an independent SD estimate on `df` degrees of freedom, √(chi-square / df). It gives the power of a
 * t test when there is a true difference.
 *
 * The definition is a single integral, and the trapezoidal rule converges so fast on such bell-shaped
 * curves (Trefethen and Weideman 2014, SIAM Rev 56:385-458) that it is summed as it stands, over whichever
 * of the two variables is the smooth one. Unlike series (Lenth 1989, Appl Stat 38:185-189) it keeps its
 * precision at any `ncp`.
 */
export function noncentralTCdf(t: number, df: number, ncp: number): number {
  if (ncp < 0) return 1 - noncentralTCdf(-t, df, -ncp);
  if (ncp > NORMAL_REACH && ncp * ncp > 2 * df) return t > 0 ? overNormal(t, df, ncp) : 0;
  return overSpread(t, df, ncp);
}

/** ∫ Φ(t s − ncp) × density of S, over v = ln s. */
function overSpread(t: number, df: number, ncp: number): number {
  const width = 1 / Math.sqrt(2 * df + ncp * ncp);
  const step = Math.min(width / STEPS_PER_WIDTH, 0.1);
  const logScale = Math.log(2) + (df / 2) * Math.log(df / 2) - logGamma(df / 2);
  const logDensity = (v: number): number => logScale + df * v - (df / 2) * Math.exp(2 * v);
  const negligible = logDensity(0) - 42;
  const term = (v: number): number => normalCdf(t * Math.exp(v) - ncp) * Math.exp(logDensity(v));
  let sum = term(0);
  for (let v = step; logDensity(v) > negligible; v += step) sum += term(v);
  for (let v = -step; logDensity(v) > negligible; v -= step) sum += term(v);
  return Math.min(1, sum * step);
}

/** ∫ P(S > (z + ncp) / t) × density of Z, over z; for t above 0. */
function overNormal(t: number, df: number, ncp: number): number {
  const step = 0.05;
  let sum = 0;
  for (let z = -NORMAL_REACH; z <= NORMAL_REACH; z += step) {
    const s = (z + ncp) / t;
    sum += Math.exp((-z * z) / 2) * chiSquareUpperTail(df * s * s, df);
  }
  return Math.min(1, (sum * step) / Math.sqrt(2 * Math.PI));
}
