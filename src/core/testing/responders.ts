import { above, atMost } from "../statistics/compare";
import { wilsonInterval } from "../statistics/wilson";
import { changesOf } from "./pairedChange";

/** How many passed the threshold. */
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
 *
 * Source: Wilson 1927, J Am Stat Assoc 22:209-212.
 *
 * @param before - Scores before, an athlete each, in the test's unit.
 * @param after - Scores after, of the same athletes in the same order.
 * @param threshold - The change that has to be passed, in the test's unit.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns The count, and the share with its interval.
 * @throws BadInput where the two are not equally long. NoAnswer where they are empty.
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
