/** In the order of their numbers, rows or columns; of items with the same number the last one counts. */
export function inOrder<T>(items: T[], numberOf: (item: T) => number): T[] {
  let before = -Infinity;
  const ordered = items.every((item) => {
    const isAfter = before < numberOf(item);
    before = numberOf(item);
    return isAfter;
  });
  if (ordered) return items;
  const byNumber = new Map(items.map((item) => [numberOf(item), item]));
  return [...byNumber.values()].sort((one, other) => numberOf(one) - numberOf(other));
}

/** Of a list in the order of its items' numbers, the item with this one. */
export function find<T>(
  items: readonly T[],
  number: number,
  numberOf: (item: T) => number,
): T | undefined {
  // Lists are mostly without gaps, so the item is likely to stand where its number says.
  let low = 0;
  let high = items.length - 1;
  let middle = Math.min(number, high);
  while (low <= high) {
    const item = items[middle];
    if (item === undefined) return undefined;
    const there = numberOf(item);
    if (there === number) return item;
    if (there < number) low = middle + 1;
    else high = middle - 1;
    middle = (low + high) >> 1;
  }
  return undefined;
}
