/** Enough for a sheet's grid of sizes; small enough never to be noticed. */
const MOST = 4096;

/**
 * The same function, remembering what it found: for a search that a formula down a column, or across a grid,
 * would make over and over for the same few numbers. Only for pure functions.
 */
export function remembering<N extends readonly number[]>(
  compute: (...numbers: N) => number,
): (...numbers: N) => number {
  const found = new Map<string, number>();
  return (...numbers) => {
    const key = numbers.join();
    const known = found.get(key);
    if (known !== undefined) return known;
    const value = compute(...numbers);
    if (found.size >= MOST) found.clear();
    found.set(key, value);
    return value;
  };
}
