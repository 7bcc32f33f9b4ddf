/** A label beside a place in the plot. */
export interface Placed {
  readonly at: number;
  readonly text: string;
}

/** Moves labels up or down, as little as needed, so that none is nearer than `gap` pixels to the next. */
export function apart<L extends Placed>(
  labels: readonly L[],
  gap: number,
  toPixels: (at: number) => number,
): (L & { readonly shift: number })[] {
  const placed = labels
    .map((label) => ({ label, from: toPixels(label.at), to: toPixels(label.at) }))
    .sort((a, b) => a.from - b.from);
  // Each pair that is too near gives way by half; a few rounds settle the handful a plot has.
  for (let round = 0; round < 50; round++) {
    placed.forEach((label, place) => {
      const before = placed[place - 1];
      const missing = before ? gap - (label.to - before.to) : 0;
      if (!before || missing <= 0) return;
      before.to -= missing / 2;
      label.to += missing / 2;
    });
  }
  return placed.map(({ label, from, to }) => ({ ...label, shift: to - from }));
}
