import { groupRows, readRows, single, table } from "../cells";
import { volumeLoads } from "../core/log/volumeLoad";
import * as quantities from "./quantities";

/**
 * Volume load: sets × reps × load, added up; by lifter, lift or week where you name the columns to count by.
 *
 * @customfunction VOLUMELOAD
 * @param load The load of each row, above 0; a row without one ("BW", blank) adds nothing.
 * @param reps The reps of each row, above 0; a row without reps is not there.
 * @param [sets] How many sets the row stands for; 1 if omitted or blank.
 * @param [by] One or more columns to count by, such as lifter and week, beside the same rows.
 * @returns One number; with by, a table with headings: the keys in order of first appearance, then volume load.
 * @errors #VALUE! naming the row for text with digits ("80kg"), a date where reps should be, or an error in a cell.
 * @example =SPARE.VOLUMELOAD({100;80;110}, {5;8;3}, {3;3;2})
 * @example =SPARE.VOLUMELOAD(C1:C200, D1:D200, F1:F200, A1:B200)
 * @source Common practice, no source.
 */
export function volumeLoad(
  load: unknown[][],
  reps: unknown[][],
  sets?: unknown[][],
  by?: unknown[][],
): unknown[][] {
  const rows = readRows(
    {
      load: { given: load, quantity: quantities.load() },
      reps: { given: reps, quantity: quantities.reps() },
      sets: { given: sets, quantity: quantities.sets() },
    },
    { by: { given: by, name: "by" } },
  );
  const log = { load: rows.numbers.load!, reps: rows.numbers.reps!, sets: rows.numbers.sets };
  if (rows.labels.by === undefined) {
    const notFilledIn = rows.count === 1 && (log.reps[0] === null || log.load[0] === null);
    return single(notFilledIn ? "" : volumeLoads(log, () => 0, 1)[0]);
  }
  const groups = groupRows(rows.labels.by, (row) => log.reps[row] !== null, rows.firstRow, "by");
  const totals = volumeLoads(log, (row) => groups.groupOf[row], groups.keys.length);
  return table(
    [...groups.headings, "volume load"],
    groups.keys.map((keys, group) => [...keys, totals[group]]),
  );
}
