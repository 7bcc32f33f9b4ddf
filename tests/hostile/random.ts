/** A stream of random numbers from 0 to below 1. */
export type Random = () => number;

/** A random whole number from 0 to below `end`. */
export const randomBelow = (random: Random, end: number): number => Math.floor(random() * end);

/** One of several. */
export const oneOf = <T>(random: Random, items: readonly T[]): T =>
  items[randomBelow(random, items.length)]!;
