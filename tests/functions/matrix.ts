import { hostileCells, wrappings } from "./hostile";

/** How the arguments beside the hostile one lie. */
const LAYOUTS = ["single", "headed column"] as const;
const WRAPS = Object.values(wrappings);

/** A call with one argument replaced: a hostile cell, wrapped, in one place among plausible arguments. */
export interface HostileCall {
  readonly layout: (typeof LAYOUTS)[number];
  readonly position: number;
  readonly wrap: (cell: unknown) => unknown;
  readonly cell: unknown;
}

/** Every kind of cell in every wrapping in every argument beside every layout. */
export const everyCall = (parameters: number): HostileCall[] =>
  LAYOUTS.flatMap((layout) =>
    Array.from({ length: parameters }, (_parameter, position) =>
      WRAPS.flatMap((wrap) => hostileCells.map((cell) => ({ layout, position, wrap, cell }))),
    ).flat(),
  );

/**
 * A part of them in which every two of cell, wrapping, argument and layout meet: each cell goes through all arguments
 * and all wrappings side by side, and starts one further on than the cell before.
 */
export const everyPair = (parameters: number): HostileCall[] =>
  hostileCells.flatMap((cell, start) =>
    Array.from(
      { length: parameters === 0 ? 0 : Math.max(parameters, WRAPS.length) },
      (_turn, turn) => ({
        layout: turnOf(LAYOUTS, start + turn),
        position: turn % parameters,
        wrap: turnOf(WRAPS, start + turn),
        cell,
      }),
    ),
  );

const turnOf = <T>(items: readonly T[], turn: number): T => items[turn % items.length]!;
