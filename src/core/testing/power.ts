import {
  noncentralTOutside,
  normalDensity,
  normalQuantile,
  studentQuantile,
} from "../statistics/distributions";
import { refineRoot } from "../statistics/findRoot";
import { remembering } from "../statistics/remembering";

/** What the t of a two-sided test must pass on either side. */
const limitOf = (alpha: number, df: number): number => -studentQuantile(alpha / 2, df);

/**
 * The power of a two-sided t test: how likely it is to find a true difference that lies `ncp` standard
 * errors from 0. Both sides count, as in R's `power.t.test(strict = TRUE)`.
 */
export function powerOfT(ncp: number, df: number, alpha: number): number {
  return noncentralTOutside(limitOf(alpha, df), df, ncp);
}

/**
 * The other way round: how many standard errors from 0 a true difference must lie for a test on `df` degrees
 * of freedom to find it with this power, which is above alpha. A grid of group sizes has few sums of sizes, so
 * what was found is kept. The search, by the logarithm, starts from the normal approximation to t that Johnson
 * and Welch 1940 give, Biometrika 31:362-389.
 */
export const ncpForPower = remembering((power, alpha, df) => {
  const limit = limitOf(alpha, df);
  const z = normalQuantile(power);
  const spread = Math.sqrt(1 + limit ** 2 / (2 * df));
  const guess = Math.max(0.1, limit * (1 - 1 / (4 * df)) + z * spread);
  const slope = (guess * normalDensity(z)) / spread;
  const excess = (u: number) => noncentralTOutside(limit, df, Math.exp(u)) - power;
  return Math.exp(refineRoot(excess, Math.log(guess), slope));
});
