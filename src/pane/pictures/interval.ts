import type { Part } from "../../cells";

/** An estimate's interval. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** A number of a result, or `undefined` where it does not exist for the data. */
export const numberOf = (part: Part): number | undefined =>
  typeof part === "number" && Number.isFinite(part) ? part : undefined;

/** The interval between two numbers of a result, where both exist. */
export function intervalOf(from: Part, to: Part): Interval | undefined {
  const [low, high] = [numberOf(from), numberOf(to)];
  return low === undefined || high === undefined ? undefined : { low, high };
}
