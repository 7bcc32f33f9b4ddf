import { groupRows, groupsIn, numberAt, readOne, readRows, setting, table } from "../../cells";
import { testTrend as fitTrends, type TestTrend } from "../../core/testing/testTrend";
import { zip } from "../../core/zip";
import { blankUnlessGiven } from "../blankUnlessGiven";
import * as quantities from "../quantities";
import { readConfidence } from "../settings";
import { typed, type Given } from "../typed";
import { namedRows } from "./namedRows";

/** The columns after the athlete, under their headings. */
const HEADINGS = {
  tests: "tests",
  slope: "slope",
  low: "low",
  high: "high",
  shrunkSlope: "shrunk slope",
  next: "next",
  nextLow: "next low",
  nextHigh: "next high",
} as const satisfies Record<keyof TestTrend, string>;

/** A week: what a coach counts training by. */
const USUAL_PER = 7;

/**
 * Three and more test days: how fast does each athlete gain, and what will the next test show? A straight line for each athlete, drawn towards the squad's as far as the scatter about the lines explains it. Gains that slow down are no straight line: then the next score comes out too high, and the slope is that of the time tested, not of the time to come.
 *
 * @customfunction TESTTREND
 * @param athlete The athlete of each test, a row a test; a row without a name is left out.
 * @param date The date of each test.
 * @param score The score of each test; 0 counts as blank. Several of one day count each.
 * @param [per] The days in a unit of time, above 0: slopes are gains in so many days, and the next test comes so many days after the last; 7 if omitted, a week.
 * @param [confidence] {@phrase confidence}
 * @returns A table with headings, a row an athlete in order of first appearance: athlete, tests, slope, low, high, shrunk slope, next (the score to expect), next low, next high. An athlete tested on one day only has tests and "".
 * @errors #N/A where nobody has three tests on two different days or more; #VALUE! naming the row for a bad cell.
 * @example =SPARE.TESTTREND({"Ada";"Ada";"Ada";"Noor";"Noor";"Noor"}, {46000;46028;46056;46000;46028;46056}, {100;104;110;120;121;125})
 * @example =SPARE.TESTTREND(A2:A90, B2:B90, C2:C90, 28)
 * @source Random slopes: Swamy 1970, Econometrica 38:311-323; shrunk: Henderson 1975, Biometrics 31:423-447; Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., ch. 5.4.
 */
export function testTrend(
  athlete: unknown[][],
  date: unknown[][],
  score: unknown[][],
  per?: unknown[][],
  confidence?: unknown[][],
): unknown[][] {
  const measures = Object.keys(HEADINGS) as (keyof TestTrend)[];
  return table(
    ["athlete", ...Object.values(HEADINGS)],
    computeTestTrend({ athlete, date, score, per, confidence }).map((row) => [
      row.athlete,
      ...measures.map((measure) => row[measure]),
    ]),
  );
}

/** The typed half of TESTTREND: a row an athlete. */
export const computeTestTrend = typed(
  (cells: Given<"athlete" | "date" | "score", "per" | "confidence">) => {
    const { numbers, labels, firstRow } = readRows(
      {
        date: {
          given: blankUnlessGiven(cells.date),
          quantity: quantities.above0("date", "a date"),
        },
        score: { given: blankUnlessGiven(cells.score), quantity: quantities.score("score") },
      },
      { athlete: { given: blankUnlessGiven(cells.athlete), name: "athlete" } },
    );
    const days = quantities.above0("per", "a number of days above 0");
    const per = readOne(setting(cells.per, days, USUAL_PER))!;
    const level = readConfidence(cells.confidence);
    const isNamed = namedRows(labels.athlete!);
    const testIn = (row: number) => {
      const [date, score] = [numberAt(numbers.date, row), numberAt(numbers.score, row)];
      return date === null || score === null || !isNamed(row) ? undefined : { date, score };
    };
    const isTest = (row: number) => testIn(row) !== undefined;
    const athletes = groupsIn(groupRows(labels.athlete!, isTest, firstRow, "athlete"));
    const tests = athletes.map(({ rows }) => rows.flatMap((row) => testIn(row) ?? []));
    const trends = fitTrends(tests, per, level);
    return zip(athletes, trends).map(([{ key }, trend]) => ({ athlete: key[0] ?? "", ...trend }));
  },
);
