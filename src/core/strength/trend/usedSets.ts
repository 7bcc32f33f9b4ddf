import { expectAtLeast, expectPositive, inRow } from "../../checks";
import { NoAnswer } from "../../problem";
import { atMost } from "../../statistics/compare";
import type { Equation } from "../equations";

/** A set of a training log. */
export interface LoggedSet {
  /** The day, as a serial number; a time of day is a fraction and does not count. */
  readonly date: number;
  readonly load: number;
  readonly reps: number;
  readonly reserve: number;
  /** The row of the log it stands on, for messages; its place in the list unless given. */
  readonly row?: number;
}

/** How the lifter judges reserve, and which sets and curve to trust. */
export interface TrendOptions {
  readonly equation: Equation;
  /** Reps the lifter has left beyond what they say, on average; 0 unless given. */
  readonly reserveBias?: number;
  /** Standard deviation of their calls, in reps; 1 unless given. */
  readonly reserveSd?: number;
  /** Sets of more reps done than this are left out; 12 unless given. */
  readonly maxReps?: number;
  /** Of the intervals; 0.95 unless given. */
  readonly confidence?: number;
  /**
   * How far the lifter's own curve may lie from the equation: the standard deviation of ln k, where they get
   * 1 + (t − 1) k reps for the equation's t. The equation's usual one unless given; 0 for a curve known exactly.
   */
  readonly curveSd?: number;
}

/** The sets that a trend is built on. */
export interface UsedSets {
  readonly sets: readonly LoggedSet[];
  /** The days they were done on, in order, each once. */
  readonly days: readonly number[];
  /** How many sets were left out, for messages. */
  readonly leftOut: number;
}

/** Under this many days there is no telling a trend from a day's form. */
export const LEAST_DAYS = 3;
const USUAL_MOST_REPS = 12;

export const dayOf = (set: LoggedSet) => Math.floor(set.date);

/**
 * The sets of a log that tell of strength.
 *
 * A set with no reserve that another set of its day beats in load or reps was no set to failure, but a warm-up
 * written as 0 or a tired set. Light sets of many reps tell little, and are left out by the reps *done*: the call
 * is an outcome, and choosing sets by it would favour the days on which it came out low. Past the equation's cap
 * there is no curve to read them by.
 */
export function usedSets(sets: readonly LoggedSet[], options: TrendOptions): UsedSets {
  const { equation, reserveBias = 0, maxReps = USUAL_MOST_REPS } = options;
  sets.forEach((set, i) => inRow(`row ${set.row ?? i + 1}`, () => checkSet(set)));
  const used = withoutBeaten(sets).filter(
    ({ reps, reserve }) =>
      atMost(reps, maxReps) && atMost(reps + reserve + reserveBias, equation.cap),
  );
  const days = [...new Set(used.map(dayOf))].sort((a, b) => a - b);
  return { sets: used, days, leftOut: sets.length - used.length };
}

/** Refuses too few days. */
export function requireDays({ days, leftOut }: UsedSets): void {
  if (days.length >= LEAST_DAYS) return;
  const why = leftOut > 0 ? ` (sets that do not count, left out: ${leftOut})` : "";
  throw new NoAnswer(
    `a trend takes sets of at least ${LEAST_DAYS} days; found ${days.length}${why}`,
  );
}

function checkSet({ load, reps, reserve }: LoggedSet): void {
  expectPositive("load", load);
  expectAtLeast("reps", reps, 1);
  expectAtLeast("reserve", reserve, 0);
}

/** The sets without those at reserve 0 that another set of their day beats: more of load or reps, less of neither. */
function withoutBeaten(sets: readonly LoggedSet[]): LoggedSet[] {
  const days = new Map<number, SizedSet[]>();
  for (const set of sets) {
    const sized = { set, load: size(set.load), reps: size(set.reps) };
    const day = days.get(dayOf(set));
    if (day) day.push(sized);
    else days.set(dayOf(set), [sized]);
  }
  const beaten = new Set<LoggedSet>();
  for (const day of days.values()) {
    // From the heaviest down, so that only the reps so far matter: the most of them, at the most load.
    day.sort((a, b) => b.load - a.load || b.reps - a.reps);
    let best: SizedSet | undefined;
    for (const sized of day) {
      const { set, load, reps } = sized;
      const isBeaten = best && (best.reps > reps || (best.reps === reps && best.load > load));
      if (set.reserve === 0 && isBeaten) beaten.add(set);
      if (!best || reps > best.reps) best = sized;
    }
  }
  return sets.filter((set) => !beaten.has(set));
}

/** A set with load and reps to compare by. */
interface SizedSet {
  readonly set: LoggedSet;
  readonly load: number;
  readonly reps: number;
}

/** A number without binary dust, so that 82.5 in one row and 0.75 × 110 in another are the same load. */
const size = (value: number) => Number(value.toPrecision(10));
