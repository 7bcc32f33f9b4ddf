import { blockColumns, invalid, readRows, table } from "../../cells";
import { testTable as tabulate } from "../../core/testing/testTable";
import { zip } from "../../core/zip";
import { blankUnlessGiven } from "../blankUnlessGiven";
import * as quantities from "../quantities";
import { readConfidence } from "../settings";
import { typed, type Given } from "../typed";
import { readSides, pairsOf, type Side } from "./sides";

/**
 * A paper's results table in one formula: two groups before and after over a whole battery of tests, a row a measure.
 *
 * @customfunction TESTTABLE
 * @param group The group of each athlete; exactly two labels, under a heading.
 * @param before Scores before: a column a measure, under headings that name them.
 * @param after Scores after: as many columns in the same order, under headings.
 * @param [first] {@phrase firstGroup}
 * @param [confidence] {@phrase confidence}
 * @returns A table with headings: measure, n A, n B, before A, after A, change A, before B, after B, change B, adjusted difference, low, high, p, Holm p, effect size.
 * @errors #VALUE! where before and after are not equally wide or have no headings, or for other than two labels.
 * @example =SPARE.TESTTABLE(A1:A30, C1:E30, F1:H30)
 * @source As GROUPCHANGE; Holm 1979, Scand J Stat 6:65-70.
 */
export function testTable(
  group: unknown[][],
  before: unknown[][],
  after: unknown[][],
  first?: unknown[][],
  confidence?: unknown[][],
): unknown[][] {
  const results = computeTestTable({ group, before, after, first, confidence });
  return table(
    TEST_TABLE.map(([heading]) => heading),
    results.map((row) => TEST_TABLE.map(([, key]) => row[key])),
  );
}

/** The typed half of TESTTABLE: a comparison of the groups for each measure. */
export const computeTestTable = typed(
  (cells: Given<"group" | "before" | "after", "first" | "confidence">) => {
    const columnsBefore = blockColumns(cells.before, quantities.score("before"));
    const columnsAfter = blockColumns(cells.after, quantities.score("after"));
    const width = Object.keys(columnsBefore).length;
    if (Object.keys(columnsAfter).length !== width) {
      throw invalid(
        `before has ${width} columns and after has ${Object.keys(columnsAfter).length}; expected as many in both`,
      );
    }
    const measures = Array.from({ length: width }, (_measure, i) => String(i));
    const rows = readRows(
      Object.fromEntries(
        zip(Object.values(columnsBefore), Object.values(columnsAfter)).flatMap(
          ([before, after], i) => [
            [`before ${i}`, before],
            [`after ${i}`, after],
          ],
        ),
      ),
      { group: { given: blankUnlessGiven(cells.group), name: "group" } },
    );
    if (rows.heading("before 0") === undefined) {
      throw invalid(
        "before and after have no headings; expected a first row that names the measures",
      );
    }
    const level = readConfidence(cells.confidence);
    const sides = readSides(
      rows.labels.group!,
      rows.firstRow,
      (row) => rows.isThere(row),
      cells.first,
    );
    return tabulate(
      measures.map((i) => {
        const pairs = (side: Side) =>
          pairsOf(side, rows.numbers[`before ${i}`]!, rows.numbers[`after ${i}`]!);
        return {
          measure: rows.heading(`before ${i}`)!,
          a: pairs(sides[0]),
          b: pairs(sides[1]),
        };
      }),
      level,
    );
  },
);

const TEST_TABLE = [
  ["measure", "measure"],
  ["n A", "nA"],
  ["n B", "nB"],
  ["before A", "beforeA"],
  ["after A", "afterA"],
  ["change A", "changeA"],
  ["before B", "beforeB"],
  ["after B", "afterB"],
  ["change B", "changeB"],
  ["adjusted difference", "adjustedDifference"],
  ["low", "low"],
  ["high", "high"],
  ["p", "p"],
  ["Holm p", "holmP"],
  ["effect size", "effectSize"],
] as const;
