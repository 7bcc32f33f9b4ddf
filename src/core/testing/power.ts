import { noncentralTCdf, studentQuantile } from "../statistics/distributions";

/**
 * The power of a two-sided t test: how likely it is to find a true difference that lies `ncp` standard
 * errors from 0. Both sides count, as in R's `power.t.test(strict = TRUE)`.
 */
export function powerOfT(ncp: number, df: number, alpha: number): number {
  const limit = -studentQuantile(alpha / 2, df);
  return 1 - noncentralTCdf(limit, df, ncp) + noncentralTCdf(-limit, df, ncp);
}
