/** Stretches of a line, each with something that goes with it. */
export interface Interval<T> {
  readonly first: number;
  readonly last: number;
  readonly item: T;
}

/** Stretches that are taken out as somebody asks for those that meet a stretch. */
export interface Intervals<T> {
  take(first: number, last: number): T[];
}

/**
 * Keeps stretches so that those which meet another are found without going through all of them: in the
 * order of their starts, under a tree that knows of each half how far its stretches go.
 */
export function indexIntervals<T>(intervals: readonly Interval<T>[]): Intervals<T> {
  const sorted = [...intervals].sort((one, other) => one.first - other.first);
  let leaves = 1;
  while (leaves < sorted.length) leaves *= 2;
  // The root is node 1, and the halves of a node are the nodes of twice its number and the next.
  const farthest = new Float64Array(2 * leaves).fill(-1);
  sorted.forEach(({ last }, at) => (farthest[leaves + at] = last));
  for (let node = leaves - 1; node > 0; node--) update(node);

  function update(node: number): void {
    farthest[node] = Math.max(farthestIn(2 * node), farthestIn(2 * node + 1));
  }

  function farthestIn(node: number): number {
    return farthest[node] ?? -1;
  }

  return {
    take(first, last) {
      const taken: T[] = [];
      visit(1, 0, leaves);
      return taken;

      function visit(node: number, from: number, count: number): void {
        const interval = sorted[from];
        if (!interval || interval.first > last || farthestIn(node) < first) return;
        if (count === 1) {
          taken.push(interval.item);
          farthest[node] = -1;
          return;
        }
        visit(2 * node, from, count / 2);
        visit(2 * node + 1, from + count / 2, count / 2);
        update(node);
      }
    },
  };
}
