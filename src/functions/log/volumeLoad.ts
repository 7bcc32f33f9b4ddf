import { readRows, single } from "../../cells";
import { volumeLoads } from "../../core/log/volumeLoad";
import { blankUnlessGiven } from "../blankUnlessGiven";
import * as quantities from "../quantities";
import { typed, type Given } from "../typed";
import { allInOne, groupIn, groupBy, keyedTable } from "./groups";

/**
 * Volume load: sets × reps × load, added up; by lifter, lift or week where you name the columns to count by.
 *
 * @customfunction VOLUMELOAD
 * @param load The load of each row, above 0; a row without one ("BW", blank) adds nothing.
 * @param reps {@phrase repsOfRow}
 * @param [sets] {@phrase setsOfRow}
 * @param [by] {@phrase countBy}
 * @returns One number; with by, a table with headings: the keys in order of first appearance, then volume load.
 * @errors #VALUE! naming the row for text with digits ("80kg"), a date where reps should be, or an error in a cell.
 * @example =SPARE.VOLUMELOAD(C2:C200, D2:D200)
 * @example =SPARE.VOLUMELOAD(C1:C200, D1:D200, F1:F200, A1:B200)
 * @source Common practice, no source.
 */
export function volumeLoad(
  load: unknown[][],
  reps: unknown[][],
  sets?: unknown[][],
  by?: unknown[][],
): unknown[][] {
  const { headings, keys, totals } = computeVolumeLoad({ load, reps, sets, by });
  return keys === undefined
    ? single(totals[0] ?? "")
    : keyedTable(
        { headings, keys },
        ["volume load"],
        totals.map((total) => [total]),
      );
}

/** The typed half of VOLUMELOAD: a total for each key; without keys the only one, none while it is not filled in. */
export const computeVolumeLoad = typed((cells: Given<"load" | "reps", "sets" | "by">) => {
  const rows = readRows(
    {
      load: { given: blankUnlessGiven(cells.load), quantity: quantities.load() },
      reps: { given: blankUnlessGiven(cells.reps), quantity: quantities.reps() },
      sets: { given: cells.sets, quantity: quantities.sets() },
    },
    { by: { given: cells.by, name: "by", canBeBlank: true } },
  );
  const log = { load: rows.numbers.load!, reps: rows.numbers.reps!, sets: rows.numbers.sets };
  if (rows.labels.by === undefined) {
    const notFilledIn = rows.count === 1 && (log.reps[0] === null || log.load[0] === null);
    return {
      headings: [],
      keys: undefined,
      totals: notFilledIn ? [] : volumeLoads(log, allInOne, 1),
    };
  }
  const groups = groupBy(rows.labels.by, log.reps, rows.firstRow);
  const totals = volumeLoads(log, groupIn(groups), groups.keys.length);
  return { headings: groups.headings, keys: groups.keys, totals };
});
