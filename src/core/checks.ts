import { BadInput } from "./problem";

/** Refuses a number that must be above 0: a load, a 1RM, a bar. */
export function expectPositive(what: string, value: number): void {
  if (!(value > 0)) throw new BadInput(`${what} is ${value}; expected above 0`);
}

/** Refuses a number below the least it can be: reps below 1, a reserve below 0. */
export function expectAtLeast(what: string, value: number, least: number): void {
  if (!(value >= least)) throw new BadInput(`${what} is ${value}; expected at least ${least}`);
}

/** Refuses all but whole numbers in a range: weeks of a block, a week of the plan. */
export function expectWhole(what: string, value: number, least: number, most: number): void {
  if (!Number.isInteger(value) || value < least || value > most) {
    throw new BadInput(`${what} is ${value}; expected a whole number from ${least} to ${most}`);
  }
}

/** Does some work on one row of a list or table; if the row is bad, the problem says which it was. */
export function inRow<T>(row: string, work: () => T): T {
  try {
    return work();
  } catch (problem) {
    if (problem instanceof BadInput) throw new BadInput(`${row}: ${problem.message}`);
    throw problem;
  }
}
