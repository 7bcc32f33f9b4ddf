import { withoutDust } from "../core/statistics/compare";

/** A finite number as a cell shows it: no minus zero, and no digits past the 15 that a cell has. */
export const shownNumber = (value: number): number => (value === 0 ? 0 : withoutDust(value));
