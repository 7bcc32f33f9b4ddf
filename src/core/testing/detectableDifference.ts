import { expectWhole } from "../checks";
import { BadInput } from "../problem";
import { normalQuantile, requireProbability } from "../statistics/distributions";
import { findRootNear } from "../statistics/findRoot";
import { powerOfT } from "./power";

const MOST = 1e7;

/**
 * The smallest true difference, in SDs, that two groups of these sizes find with the power asked for: the
 * other way round from `sampleSize`, for a squad whose size is given.
 */
export function detectableDifference(nA: number, nB: number, power: number, alpha: number): number {
  expectWhole("nA", nA, 2, MOST);
  expectWhole("nB", nB, 2, MOST);
  requireProbability("power", power);
  requireProbability("alpha", alpha);
  if (power <= alpha) {
    throw new BadInput(`power is ${power}; it must be above alpha, which a test reaches by chance`);
  }
  const df = nA + nB - 2;
  const guess = Math.max(0.5, normalQuantile(power) - normalQuantile(alpha / 2));
  const logNcp = findRootNear((u) => powerOfT(Math.exp(u), df, alpha) - power, Math.log(guess));
  return Math.exp(logNcp) * Math.sqrt(1 / nA + 1 / nB);
}
