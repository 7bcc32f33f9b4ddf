import { readRows, single } from "../../cells";
import { closeSets as countCloseSets } from "../../core/log/closeSets";
import { blankUnlessGiven } from "../blankUnlessGiven";
import * as quantities from "../quantities";
import { typed, type Given } from "../typed";
import { allInOne, groupIn, groupBy, keyedTable } from "./groups";
import { readWithin } from "./readWithin";

/**
 * Sets taken close to failure: with at most so many reps left, 4 unless you say otherwise. A set with no reserve written down is not counted; write E2:E200&"" so that Excel does not read its blank as 0.
 *
 * @customfunction CLOSESETS
 * @param reps {@phrase repsOfRow}
 * @param reserve Reps in reserve, 0 or more; blank means not recorded. {@phrase blankSafe E2:E200}
 * @param [sets] {@phrase setsOfRow}
 * @param [within] {@phrase within}
 * @param [by] {@phrase countBy}
 * @returns A number of sets; with by, a table with headings: the keys in order of first appearance, then close sets.
 * @errors #VALUE! naming the row for text with digits, a date where reps or reserve should be, or an error in a cell.
 * @example =SPARE.CLOSESETS(D2:D200, E2:E200&"", F2:F200)
 * @example =SPARE.CLOSESETS(D1:D200, E1:E200&"", F1:F200, 3, A1:B200)
 * @source Common practice, no source.
 */
export function closeSets(
  reps: unknown[][],
  reserve: unknown[][],
  sets?: unknown[][],
  within?: unknown[][],
  by?: unknown[][],
): unknown[][] {
  const { headings, keys, totals } = computeCloseSets({ reps, reserve, sets, within, by });
  return keys === undefined
    ? single(totals[0] ?? "")
    : keyedTable(
        { headings, keys },
        ["close sets"],
        totals.map((total) => [total]),
      );
}

type CloseSetsCells = Given<"reps" | "reserve", "sets" | "within" | "by">;

/** The typed half of CLOSESETS: a number for each key; without keys the only one, none while it is not filled in. */
export const computeCloseSets = typed((cells: CloseSetsCells) => {
  const rows = readRows(
    {
      reps: { given: blankUnlessGiven(cells.reps), quantity: quantities.reps() },
      reserve: { given: blankUnlessGiven(cells.reserve), quantity: quantities.reserve() },
      sets: { given: cells.sets, quantity: quantities.sets() },
    },
    { by: { given: cells.by, name: "by", canBeBlank: true } },
  );
  const log = { reps: rows.numbers.reps!, reserve: rows.numbers.reserve, sets: rows.numbers.sets };
  const limit = readWithin(cells.within);
  if (rows.labels.by === undefined) {
    const notFilledIn = rows.count === 1 && (log.reps[0] === null || log.reserve![0] === null);
    const totals = notFilledIn ? [] : countCloseSets(log, limit, allInOne, 1);
    return { headings: [], keys: undefined, totals };
  }
  const groups = groupBy(rows.labels.by, log.reps, rows.firstRow);
  const totals = countCloseSets(log, limit, groupIn(groups), groups.keys.length);
  return { headings: groups.headings, keys: groups.keys, totals };
});
