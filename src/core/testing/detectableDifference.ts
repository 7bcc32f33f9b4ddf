import { expectWhole } from "../checks";
import { BadInput } from "../problem";
import { requireProbability } from "../statistics/distributions";
import { ncpForPower } from "./power";

const MOST = 1e7;

/**
 * The smallest true difference, in SDs, that two groups of these sizes find with the power asked for: the
 * other way round from `sampleSize`, for a squad whose size is given.
 *
 * Source: as for `sampleSize`.
 *
 * @param nA - Athletes of group A.
 * @param nB - Athletes of group B.
 * @param power - The chance to find what is there, above 0 and below 1; 0.8 is usual.
 * @param alpha - The chance of a false alarm, above 0 and below 1; 0.05 is usual.
 * @returns The difference in SDs.
 * @throws BadInput where a group has fewer than 2, or `power` is not above `alpha`.
 */
export function detectableDifference(nA: number, nB: number, power: number, alpha: number): number {
  expectWhole("nA", nA, 2, MOST);
  expectWhole("nB", nB, 2, MOST);
  requireProbability("power", power);
  requireProbability("alpha", alpha);
  if (power <= alpha) {
    throw new BadInput(`power is ${power}; expected above alpha, which a test reaches by chance`);
  }
  return ncpForPower(power, alpha, nA + nB - 2) * Math.sqrt(1 / nA + 1 / nB);
}
