import {
  noncentralTOutside,
  normalDensity,
  normalQuantile,
  studentQuantile,
} from "../statistics/distributions";
import { refineRoot } from "../statistics/findRoot";
import { remembering } from "../statistics/remembering";
import { interpolated } from "../statistics/chebyshev";

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

/** From so many degrees of freedom on, what a difference must reach changes smoothly enough to be told from a few. */
const SMOOTH_FROM = 30;
/** What a study asks for so many times over is worth finding for all sizes at once. */
const WORTH_SHARING = 8;
/** Far more than the smooth curve is ever off, relative, and far less than a size more or less makes out. */
const DOUBT = 1e-7;

/** How one power and one alpha have been asked about. */
interface Shared {
  asked: number;
  curve: ((x: number) => number) | undefined;
}
const shared = new Map<string, Shared>();

/**
 * Whether a difference of so many standard errors is found with this power, given degrees of freedom. `judge` compares
 * with what is needed. Down a column of plans the needed ones lie on one smooth curve over 1 / df, which is
 * then found once; only where a plan comes so near to it that the curve might be wrong is the search made.
 */
export function isFound(
  standardErrors: number,
  power: number,
  alpha: number,
  df: number,
  judge: (standardErrors: number, needed: number) => boolean,
): boolean {
  if (df >= SMOOTH_FROM) {
    const needed = curveOf(power, alpha)?.(1 / df);
    if (needed !== undefined && Math.abs(standardErrors - needed) > DOUBT * needed) {
      return standardErrors > needed;
    }
  }
  return judge(standardErrors, ncpForPower(power, alpha, df));
}

/** The curve of a power and an alpha that have been asked about often enough. */
function curveOf(power: number, alpha: number): Shared["curve"] {
  const key = `${power},${alpha}`;
  let known = shared.get(key);
  if (!known) {
    // Few powers are asked for in earnest; a column with another in every row shares nothing.
    if (shared.size >= 64) shared.clear();
    known = { asked: 0, curve: undefined };
    shared.set(key, known);
  }
  known.asked++;
  if (known.asked > WORTH_SHARING) {
    known.curve ??= interpolated((x) => ncpForPower(power, alpha, 1 / x), 1 / SMOOTH_FROM);
  }
  return known.curve;
}
