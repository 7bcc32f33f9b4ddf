import type { Absent } from "../problem";
import { atLeast, atMost } from "../statistics/compare";
import type { Equation } from "../strength/equations";
import { isClose } from "./closeSets";
import { reserveIn, setsIn, type GroupOf, type JudgedSets, type LogColumn } from "./columns";

/** A log with loads. */
export interface SummarisedSets extends JudgedSets {
  readonly load: LogColumn;
}

/** What a coach asks of a stretch of training. */
export interface LogSummary {
  readonly sets: number;
  readonly reps: number;
  readonly volumeLoad: number;
  readonly closeSets: number;
  /** Over the sets whose reserve was recorded, weighted by sets. */
  readonly meanReserve: number | Absent;
  readonly topLoad: number | Absent;
  readonly bestE1rm: number | Absent;
  /** Sets that volume load and e1RM know nothing of: no total is silently short. */
  readonly setsWithoutLoad: number;
  /** Desktop Excel passes a blank reserve as 0, so the two are counted together: the most that may be blanks. */
  readonly setsAtReserve0OrBlank: number;
}

/** What a summary counts as close, and what it takes an e1RM from. */
export interface SummaryOptions {
  /** How many reps from failure still is close. */
  readonly within: number;
  /** The most reps to failure that an e1RM is taken from; high-rep sets estimate it badly. */
  readonly maxReps: number;
  readonly equation: Equation;
}

/**
 * Sums up each group of rows in one pass. A row without a load or without a reserve is still a set that was done:
 * it counts in all that can be known of it, and in the two columns that say how many there were.
 *
 * Source: common practice, no source.
 *
 * @param log - The log by columns, a place a row; null is not recorded.
 * @param groupOf - Which group a row counts in, from 0 on.
 * @param groups - How many groups there are.
 * @returns A summary a group.
 */
export function summariseLog(
  log: SummarisedSets,
  groupOf: GroupOf,
  groups: number,
  { within, maxReps, equation }: SummaryOptions,
): LogSummary[] {
  // A column of numbers a measure, not an object a row: a log has many rows.
  const column = (): Float64Array => new Float64Array(groups);
  const sets = column();
  const reps = column();
  const volumeLoad = column();
  const close = column();
  const judged = column();
  const reserveTotal = column();
  const topLoad = column();
  const best = column();
  const withoutLoad = column();
  const zeroOrBlank = column();

  for (let row = 0; row < log.reps.length; row++) {
    const repsDone = log.reps[row] ?? null;
    if (repsDone === null) continue;
    const group = groupOf(row);
    const count = setsIn(log.sets, row);
    const load = log.load[row] ?? null;
    const reserve = reserveIn(log.reserve, row);

    sets[group]! += count;
    reps[group]! += count * repsDone;
    if (isClose(reserve, within)) close[group]! += count;
    if (reserve === null || reserve === 0) zeroOrBlank[group]! += count;
    if (reserve !== null) {
      judged[group]! += count;
      reserveTotal[group]! += count * reserve;
    }
    if (load === null) {
      withoutLoad[group]! += count;
      continue;
    }
    volumeLoad[group]! += count * repsDone * load;
    if (load > topLoad[group]!) topLoad[group] = load;
    if (reserve === null) continue;
    const repsToFailure = repsDone + reserve;
    if (canEstimate(repsToFailure, maxReps, equation)) {
      const estimate = load / equation.fraction(repsToFailure);
      if (estimate > best[group]!) best[group] = estimate;
    }
  }

  return Array.from({ length: groups }, (_group, group) => {
    const of = (totals: Float64Array) => totals[group]!;
    return {
      sets: of(sets),
      reps: of(reps),
      volumeLoad: of(volumeLoad),
      closeSets: of(close),
      meanReserve:
        of(judged) > 0
          ? of(reserveTotal) / of(judged)
          : { absent: "no set has a reserve written down" },
      topLoad: of(topLoad) > 0 ? of(topLoad) : { absent: "no set has a load" },
      bestE1rm:
        of(best) > 0
          ? of(best)
          : { absent: `no set has a load, a reserve and at most ${maxReps} reps to failure` },
      setsWithoutLoad: of(withoutLoad),
      setsAtReserve0OrBlank: of(zeroOrBlank),
    };
  });
}

/** Outside these bounds a set is training, but no test of strength; it is left out, not refused. */
const canEstimate = (repsToFailure: number, maxReps: number, { cap }: Equation): boolean =>
  atLeast(repsToFailure, 1) && atMost(repsToFailure, Math.min(maxReps, cap));
