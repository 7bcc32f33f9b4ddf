import { expectWhole } from "../checks";
import { BadInput } from "../problem";
import { requireProbability } from "../statistics/distributions";
import { ncpForPower } from "./power";

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
    throw new BadInput(`power is ${power}; expected above alpha, which a test reaches by chance`);
  }
  return ncpForPower(power, alpha, nA + nB - 2) * Math.sqrt(1 / nA + 1 / nB);
}
