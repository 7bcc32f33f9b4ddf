import { above, atMost, below } from "../statistics/compare";

/** What may be said of a change. */
export type ChangeReading =
  | "real increase"
  | "real increase, perhaps too small to matter"
  | "real decrease"
  | "real decrease, perhaps too small to matter"
  | "real, too small to matter"
  | "within test error";

/** Where the true change lies, at the confidence asked for. */
export interface ChangeInterval {
  readonly low: number;
  readonly high: number;
}

/**
 * What may be said of a change whose true size lies in an interval. It is real where the interval leaves 0
 * out; too small to matter where even its far end is no larger than the smallest change that matters; perhaps
 * too small where the near end is below it.
 *
 * Source: common practice, no source.
 *
 * @param smallest - The smallest change that matters, in the change's unit, 0 or more.
 * @returns What may be said.
 */
export function changeReading({ low, high }: ChangeInterval, smallest: number): ChangeReading {
  // The middle further from 0 than the ends are from the middle: binary dust at 0 decides nothing.
  if (!above(Math.abs(low + high), high - low)) return "within test error";
  const [near, far] = [Math.abs(low), Math.abs(high)].sort((a, b) => a - b) as [number, number];
  if (atMost(far, smallest)) return "real, too small to matter";
  const direction = low > 0 ? "real increase" : "real decrease";
  return below(near, smallest) ? `${direction}, perhaps too small to matter` : direction;
}
