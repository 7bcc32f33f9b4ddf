import { above, atMost } from "../statistics/compare";
import { wilsonInterval } from "../statistics/wilson";
import { changesOf } from "./pairedChange";

export interface Responders {
  readonly n: number;
  /** How many changed by more than the threshold. */
  readonly responders: number;
  readonly share: number;
  readonly low: number;
  readonly high: number;
  /** How many did not increase at all. */
  readonly noIncrease: number;
}

/**
 * How many athletes changed by more than a threshold, as a share with Wilson's interval. Some pass it by
 * test error alone: see `responseShare`.
 */
export function responders(
  before: readonly number[],
  after: readonly number[],
  threshold: number,
  confidence: number,
): Responders {
  const changes = changesOf(before, after);
  const count = changes.filter((change) => above(change, threshold)).length;
  return {
    n: changes.length,
    responders: count,
    ...wilsonInterval(count, changes.length, confidence),
    noIncrease: changes.filter((change) => atMost(change, 0)).length,
  };
}
