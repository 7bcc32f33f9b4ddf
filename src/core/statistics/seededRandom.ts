/**
 * A stream of numbers between 0 and 1 that look random and are the same every time for the same seed, so
 * that a split of a squad can be shown again. The generator is mulberry32 (Tommy Ettinger, public domain).
 */
export function seededRandom(seed: number): () => number {
  let state = Math.trunc(seed) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** The items in random order (Fisher and Yates 1938; Durstenfeld 1964, Commun ACM 7:420). */
export function shuffled<T>(items: readonly T[], random: () => number): T[] {
  const order = [...items];
  for (let last = order.length - 1; last > 0; last--) {
    const pick = Math.floor(random() * (last + 1));
    [order[last], order[pick]] = [order[pick]!, order[last]!];
  }
  return order;
}
