import {
  groupRows,
  nthRow,
  invalid,
  quoted,
  readCell,
  readRows,
  table,
  type Labels,
  type NumberColumn,
} from "../../cells";
import { muscleSets as countMuscleSets } from "../../core/log/muscleSets";
import { isBlankLabel } from "../blankLabel";
import { blankUnlessGiven } from "../blankUnlessGiven";
import * as quantities from "../quantities";
import { readShares, type Shares } from "../shares";
import { typed, type Given } from "../typed";
import { allInOne, groupIn, groupBy, keyedTable } from "./groups";
import { readWithin } from "./readWithin";

/**
 * Close sets per muscle: each set taken close to failure counts for a muscle by the exercise's share in it, 1 for the muscle that does the work, 0.5 for one that helps. A set with no reserve written down is not counted.
 *
 * @customfunction MUSCLESETS
 * @param exercise The exercise of each row, as the shares table spells it; case does not matter.
 * @param reps {@phrase repsOfRow}
 * @param shares A table with headings: exercise, then a column a muscle; in it 1, 0.5 or 0. Blank is 0.
 * @param [reserve] {@phrase reserve} {@phrase blankSafe E2:E200}
 * @param [sets] {@phrase setsOfRow}
 * @param [within] {@phrase within}
 * @param [by] {@phrase countBy}
 * @returns A table with headings: a row a muscle; with by, a row a key and a column a muscle.
 * @errors #VALUE! naming the row and the exercise when shares does not list it, and the row of a bad cell.
 * @example =SPARE.MUSCLESETS(B2:B200, D2:D200, Shares!A1:F12, E2:E200&"")
 * @example =SPARE.MUSCLESETS(B1:B200, D1:D200, Shares!A1:F12, E1:E200&"", F1:F200, 4, A1:A200)
 * @source Fractional counting of sets: Pelland et al. 2024.
 */
export function muscleSets(
  exercise: unknown[][],
  reps: unknown[][],
  shares: unknown[][],
  reserve?: unknown[][],
  sets?: unknown[][],
  within?: unknown[][],
  by?: unknown[][],
): unknown[][] {
  const cells = { exercise, reps, shares, reserve, sets, within, by };
  const { muscles, headings, keys, totals } = computeMuscleSets(cells);
  const [total = []] = totals;
  return keys === undefined
    ? table(
        ["muscle", "close sets"],
        muscles.map((muscle, index) => [muscle, total[index] ?? 0]),
      )
    : keyedTable({ headings, keys }, muscles, totals);
}

type MuscleSetsCells = Given<"exercise" | "reps" | "shares", "reserve" | "sets" | "within" | "by">;

/** The typed half of MUSCLESETS: for each key, or for all as one, the sets of each muscle. */
export const computeMuscleSets = typed((cells: MuscleSetsCells) => {
  const rows = readRows(
    {
      reps: { given: blankUnlessGiven(cells.reps), quantity: quantities.reps() },
      reserve: { given: cells.reserve, quantity: quantities.reserve() },
      sets: { given: cells.sets, quantity: quantities.sets() },
    },
    {
      exercise: { given: blankUnlessGiven(cells.exercise), name: "exercise" },
      by: { given: cells.by, name: "by", canBeBlank: true },
    },
  );
  const { muscles, rows: shareRows, placeOf } = readShares(cells.shares);
  const log = { reps: rows.numbers.reps!, reserve: rows.numbers.reserve, sets: rows.numbers.sets };
  const exerciseOf = findExercises(rows.labels.exercise!, log.reps, placeOf, rows.firstRow);
  const limit = readWithin(cells.within);
  if (rows.labels.by === undefined) {
    const totals = countMuscleSets({ ...log, exerciseOf }, shareRows, limit, allInOne, 1);
    return { muscles, headings: [], keys: undefined, totals };
  }
  const groups = groupBy(rows.labels.by, log.reps, rows.firstRow);
  const totals = countMuscleSets(
    { ...log, exerciseOf },
    shareRows,
    limit,
    groupIn(groups),
    groups.keys.length,
  );
  return { muscles, headings: groups.headings, keys: groups.keys, totals };
});

/** Finds each row's exercise among the shares. One that is missing there is an error: its sets would be lost. */
function findExercises(
  exercises: Labels,
  reps: NumberColumn,
  placeOf: Shares["placeOf"],
  firstRow: number,
): (row: number) => number {
  if (exercises.headings.length > 1) {
    throw invalid(`exercise has ${exercises.headings.length} columns; expected one column`);
  }
  const { keys, groupOf } = groupRows(exercises, (row) => reps[row] !== null, firstRow, "exercise");
  const places = keys.map(([exercise = ""], group) => {
    const place = placeOf(exercise);
    if (place !== undefined) return place;
    const found = isBlankLabel(readCell(exercise))
      ? "exercise is blank; expected one that shares lists"
      : `shares does not list the exercise ${quoted(String(exercise))}`;
    throw invalid(found).at(nthRow(groupOf.indexOf(group) + firstRow));
  });
  return (row) => places[groupOf[row] ?? -1] ?? -1;
}
