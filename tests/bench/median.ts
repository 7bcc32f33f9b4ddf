import { elementAt } from "../present";

/** The middle one of an odd number of values, the upper of the two in the middle of an even one. */
export const median = (values: readonly number[]): number =>
  elementAt(
    [...values].sort((a, b) => a - b),
    Math.floor(values.length / 2),
  );
