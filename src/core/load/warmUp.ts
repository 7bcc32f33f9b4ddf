import { expectAtLeast, expectPositive, expectWhole, inRow } from "../checks";
import { BadInput } from "../problem";
import { above, below } from "../statistics/compare";
import { roundToMultiple } from "./round";

/** A step on the way up to the work set: a fraction of its load, and the reps to do. */
export interface WarmUpStep {
  readonly fraction: number;
  readonly reps: number;
  /** The row of the table of steps it stands on, for messages; its place in the list unless given. */
  readonly row?: number;
}

/** A set of a warm-up. */
export interface WarmUpSet {
  readonly load: number;
  readonly reps: number;
}

/** What can be said of a warm-up besides the load. */
export interface WarmUpOptions {
  /** No warm-up is lighter than this; 0 unless given. */
  readonly bar?: number;
  /** Loads go in steps of this; 0 or not given for no rounding. */
  readonly increment?: number;
  readonly steps?: readonly WarmUpStep[];
}

/** Fewer reps as the load climbs, so that the work set is met warm but not tired (common practice). */
export const COMMON_STEPS: readonly WarmUpStep[] = [
  { fraction: 0.4, reps: 8 },
  { fraction: 0.6, reps: 5 },
  { fraction: 0.75, reps: 3 },
  { fraction: 0.9, reps: 1 },
];

const MOST_REPS = 100;

/**
 * The warm-up sets before a work set of this load: each step's fraction of it, rounded to the nearest increment (a tie
 * down), and never below the bar. What then is not lighter than the work set is no warm-up, and is not listed.
 *
 * Source: common practice, no source.
 *
 * @param load - The load, in kilograms or pounds, above 0.
 * @param options - The bar, the increment and the steps; those of `COMMON_STEPS` unless given.
 * @returns The sets, lightest first, in the load's unit.
 * @throws BadInput where the load is lighter than the bar, or a step cannot be.
 */
export function warmUpSets(load: number, options: WarmUpOptions = {}): WarmUpSet[] {
  const { bar = 0, increment = 0, steps = COMMON_STEPS } = options;
  expectPositive("load", load);
  expectAtLeast("bar", bar, 0);
  expectAtLeast("increment", increment, 0);
  if (above(bar, load)) throw new BadInput(`load is ${load}; expected at least the bar, ${bar}`);
  const sets = steps.map(({ fraction, reps, row }, i) =>
    inRow(`step ${row ?? i + 1}`, () => {
      if (!(fraction > 0 && fraction <= 1)) {
        throw new BadInput(
          `fraction is ${fraction}; expected above 0 and at most 1 (0.4 is 40% of the load)`,
        );
      }
      expectWhole("reps", reps, 1, MOST_REPS);
      const rounded = roundToMultiple(load * fraction, increment, "nearest-tie-down");
      return { load: Math.max(rounded, bar), reps };
    }),
  );
  return sets.filter((set) => below(set.load, load));
}
