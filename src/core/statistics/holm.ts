/**
 * p values of several tests at once, raised so that the chance of even one false alarm among them stays
 * what a single test's was: the smallest times their number, the next times one fewer, and so on, never
 * falling on the way and never above 1.
 *
 * Source: Holm 1979, Scand J Stat 6:65-70.
 *
 * @param ps - A p value a test.
 * @returns The raised p values, in the same order.
 */
export function holm(ps: readonly number[]): number[] {
  const adjusted = new Array<number>(ps.length);
  const rising = [...ps.entries()].sort(([, one], [, other]) => one - other);
  let highest = 0;
  rising.forEach(([place, p], rank) => {
    highest = Math.max(highest, Math.min(1, (ps.length - rank) * p));
    adjusted[place] = highest;
  });
  return adjusted;
}
