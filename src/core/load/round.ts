import { BadInput } from "../problem";
import { above, atLeast, sameTo, withoutDust } from "../statistics/compare";

/**
 * Which way to round. A load or a number of sets goes to the nearest, an exact tie down; a reserve to the
 * nearest, a tie up: both are the cautious side.
 */
export type Rounding = "nearest-tie-down" | "nearest-tie-up" | "down" | "up";

/**
 * Rounds to a multiple: a bar can only be loaded in steps, so 98.6 kg in steps of 2.5 is 97.5.
 *
 * What counts as a tie or as already a multiple is judged to a relative 1e-9: 157.5 × 22/36 is a tie in
 * steps of 2.5 (96.25), though its binary product lies a hair above. A multiple of 0 means no rounding.
 *
 * Source: common practice, no source.
 *
 * @param value - The number to round.
 * @param multiple - What it is to be a multiple of; 0 for no rounding.
 * @param rounding - Which way, and where a tie goes.
 * @returns The multiple.
 * @throws BadInput where `multiple` is below 0.
 */
export function roundToMultiple(value: number, multiple: number, rounding: Rounding): number {
  if (multiple < 0) throw new BadInput(`multiple is ${multiple}; expected 0 or more`);
  if (multiple === 0) return value;
  const steps = value / multiple;
  const whole = Math.round(steps);
  return withoutDust((sameTo(steps, whole) ? whole : roundedSteps(steps, rounding)) * multiple);
}

function roundedSteps(steps: number, rounding: Rounding): number {
  const lower = Math.floor(steps);
  const middle = lower + 0.5;
  switch (rounding) {
    case "down":
      return lower;
    case "up":
      return lower + 1;
    case "nearest-tie-up":
      return atLeast(steps, middle) ? lower + 1 : lower;
    case "nearest-tie-down":
      return above(steps, middle) ? lower + 1 : lower;
  }
}
