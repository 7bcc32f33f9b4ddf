import { blockColumns, numberAt, readOne, readRows, setting } from "../../cells";
import { balancedGroups as dealGroups } from "../../core/testing/balancedGroups";
import { zip } from "../../core/zip";
import * as quantities from "../quantities";
import { typed, type Given } from "../typed";
import { labelAt } from "./labelAt";

/**
 * Splits a squad into groups that match on score: ranked, and dealt by lot within each run of like athletes. Paste the letters as values once they are drawn, so that a later edit does not deal again.
 *
 * @customfunction BALANCEDGROUPS
 * @param scores Scores, a row an athlete; several columns count as their mean z-score; 0 counts as blank.
 * @param [groups] How many groups, 2 to 26; 2 if omitted.
 * @param [strata] A label a row, such as sex or boat, within which to balance.
 * @param [seed] A whole number of your own, such as today's date or a roll of dice; the same seed gives the same split. 1 if omitted, which deals like everybody else's 1: choose your own before you look at the split.
 * @returns A group letter beside each row; "" beside a heading and where a score is missing.
 * @errors #VALUE! naming the row for a bad cell, for more than 26 groups, or for a seed that is not a whole number.
 * @example =SPARE.BALANCEDGROUPS({140;155;120;132;148;126}, 2)
 * @source Stratified randomization: common practice, no source.
 */
export function balancedGroups(
  scores: unknown[][],
  groups?: unknown[][],
  strata?: unknown[][],
  seed?: unknown[][],
): unknown[][] {
  return computeBalancedGroups({ scores, groups, strata, seed }).map((letter) => [letter ?? ""]);
}

/** The typed half of BALANCEDGROUPS: a group's letter for each row, nothing beside a heading or a missing score. */
export const computeBalancedGroups = typed(
  (cells: Given<"scores", "groups" | "strata" | "seed">) => {
    const columns = blockColumns(cells.scores, quantities.score("scores"));
    const rows = readRows(columns, {
      strata: { given: cells.strata, name: "strata", canBeBlank: true },
    });
    const count = quantities.whole("groups", "a whole number of groups, 2 to 26", 26);
    const numberOfGroups = readOne(
      setting(
        cells.groups,
        { ...count, accepts: (value) => count.accepts(value) && value >= 2 },
        2,
      ),
    )!;
    const seed = readOne(setting(cells.seed, quantities.seed(), 1))!;
    const whole: { row: number; scores: number[] }[] = [];
    for (let row = 0; row < rows.count; row++) {
      const values = Object.keys(columns).map((key) => numberAt(rows.numbers[key], row));
      if (values.every((value) => value !== null)) whole.push({ row, scores: values });
    }
    const letters = dealGroups(
      whole.map((athlete) => athlete.scores),
      numberOfGroups,
      rows.labels.strata &&
        whole.map(({ row }) => labelAt(rows.labels.strata!, row, rows.firstRow, "strata")),
      seed,
    );
    const result = Array.from<unknown, string | null>(
      { length: rows.count + rows.firstRow - 1 },
      () => null,
    );
    for (const [{ row }, letter] of zip(whole, letters)) result[row + rows.firstRow - 1] = letter;
    return result;
  },
);
