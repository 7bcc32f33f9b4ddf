import { setting, type Lifted } from "../../cells";
import { smallestWorthwhileChange } from "../../core/testing/smallestWorthwhileChange";
import { blankUnlessGiven } from "../blankUnlessGiven";
import { readWholeRows } from "../pairs";
import * as quantities from "../quantities";
import { typedLift, type Given } from "../typed";

/**
 * Smallest worthwhile change: a share of the spread between athletes, a fifth unless you say otherwise.
 *
 * @customfunction SWC
 * @param scores The athletes' scores, a column; 0 counts as blank.
 * @param [fraction] The share of the between-athlete standard deviation; 0.2 if omitted.
 * @returns The smallest worthwhile change, in the unit of the scores.
 * @errors #N/A under 2 scores, or where all are the same.
 * @example =SPARE.SWC({146;148;170;90;157;156;176;205})
 * @source 0.2 as the smallest standardized change: Cohen 1988; Hopkins 2000, Sports Med 30:1-15.
 */
export function swc(scores: unknown[][], fraction?: unknown[][]): unknown[][] {
  return computeSwc({ scores, fraction }).map((row) => row.map((change) => change ?? ""));
}

/** The typed half of SWC: the smallest worthwhile change for each fraction. */
export function computeSwc(cells: Given<"scores", "fraction">): Lifted<number> {
  const { columns } = readWholeRows({
    scores: { given: blankUnlessGiven(cells.scores), quantity: quantities.score("scores") },
  });
  return typedLift(fractions, ({ fraction }) => smallestWorthwhileChange(columns.scores, fraction))(
    cells,
  );
}

const fractions = (cells: Given<"scores", "fraction">) => ({
  fraction: setting(cells.fraction, quantities.above0("fraction"), 0.2),
});
