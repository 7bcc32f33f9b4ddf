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
    for (let next = 1; next < placed.length; next++) {
      const missing = gap - (placed[next].to - placed[next - 1].to);
      if (missing <= 0) continue;
      placed[next - 1].to -= missing / 2;
      placed[next].to += missing / 2;
    }
  }
  return placed.map(({ label, from, to }) => ({ ...label, shift: to - from }));
}
