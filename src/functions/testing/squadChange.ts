import { keyContent, numberAt, readOne, readRows, setting, single, table } from "../../cells";
import { squadChange as scoreSquad, type ScorePair } from "../../core/testing/squadChange";
import { zip } from "../../core/zip";
import { blankUnlessGiven } from "../blankUnlessGiven";
import * as quantities from "../quantities";
import { typed, type Given } from "../typed";
import { errorInputs } from "./errorInputs";
import { labelAt } from "./labelAt";
import { namedRows } from "./namedRows";

/** An athlete's scores, under the name that the sheet has. */
type NamedPair = ScorePair & { readonly name: number | string };

/** The columns after the athlete, under their headings. */
const HEADINGS = {
  reading: "reading",
  change: "change",
  shrunkChange: "shrunk change",
  low: "low",
  high: "high",
  chanceAbove: "chance above smallest",
  chanceBelow: "chance below minus smallest",
} as const;

/**
 * Who of the squad changed, all tested at once? Each change is drawn towards the squad's, as far as test error explains the distance: the largest change of a squad is the luckiest too. Of twenty athletes who did not change, CHANGESCORE calls one "real" by chance; this seldom calls any.
 *
 * @customfunction SQUADCHANGE
 * @param athlete The athletes' names, a row each; a row without a name is left out.
 * @param before {@phrase scoresBefore}
 * @param after {@phrase scoresAfter}
 * @param typicalError The typical error of the test, above 0, in the unit of the scores; one number for all.
 * @param [smallest] {@phrase smallest}
 * @param [df] {@phrase errorDf}
 * @param [confidence] {@phrase confidence}
 * @param [scale] How far apart true changes may lie, above 0, in the unit of the scores; 4 typical errors if omitted, which serves any squad.
 * @returns A table with headings, a row an athlete with both scores: athlete, reading (as in CHANGESCORE, from low and high), change, shrunk change, low, high, chance above smallest, chance below minus smallest.
 * @errors #N/A without an athlete with both scores; #VALUE! naming the row for a bad cell, for a df below 1, or where the changes lie over 1,000 typical errors apart: then the two are not in one unit.
 * @example =SPARE.SQUADCHANGE({"Ada";"Noor";"Tomas";"Iris"}, {100;110;120;90}, {105;112.5;132.5;90}, 2.5, 2.5)
 * @example =SPARE.SQUADCHANGE(A2:A25, B2:B25, C2:C25, 2.1, 2.5, 14)
 * @source Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., ch. 5.4; Gelman 2006, Bayesian Anal 1:515-533.
 */
export function squadChange(
  athlete: unknown[][],
  before: unknown[][],
  after: unknown[][],
  typicalError: unknown[][],
  smallest?: unknown[][],
  df?: unknown[][],
  confidence?: unknown[][],
  scale?: unknown[][],
): unknown[][] {
  const cells = { athlete, before, after, typicalError, smallest, df, confidence, scale };
  const rows = computeSquadChange(cells);
  if (rows === null) return single("");
  const measures = Object.keys(HEADINGS) as (keyof typeof HEADINGS)[];
  return table(
    ["athlete", ...Object.values(HEADINGS)],
    rows.map((row) => [row.athlete, ...measures.map((measure) => row[measure])]),
  );
}

/** The typed half of SQUADCHANGE: a row an athlete with both scores; `null` while the typical error is blank. */
export const computeSquadChange = typed(
  (
    cells: Given<
      "athlete" | "before" | "after" | "typicalError",
      "smallest" | "df" | "confidence" | "scale"
    >,
  ) => {
    const { numbers, labels, count, firstRow } = readRows(
      {
        before: { given: blankUnlessGiven(cells.before), quantity: quantities.score("before") },
        after: { given: blankUnlessGiven(cells.after), quantity: quantities.score("after") },
      },
      { athlete: { given: blankUnlessGiven(cells.athlete), name: "athlete" } },
    );
    const inputs = errorInputs(cells);
    const typicalError = readOne(inputs.typicalError);
    const test = {
      smallest: readOne(setting(cells.smallest, quantities.smallest(), 0))!,
      df: readOne(inputs.df) ?? undefined,
      confidence: readOne(inputs.confidence)!,
      scale: readOne(setting(cells.scale, quantities.spread("scale"), undefined)) ?? undefined,
    };
    if (typicalError === null) return null;
    const isNamed = namedRows(labels.athlete!);
    const athletes: NamedPair[] = [];
    for (let row = 0; row < count; row++) {
      const scoreBefore = numberAt(numbers.before, row);
      const scoreAfter = numberAt(numbers.after, row);
      if (scoreBefore === null || scoreAfter === null || !isNamed(row)) continue;
      labelAt(labels.athlete!, row, firstRow, "athlete");
      const name = keyContent(labels.athlete!.cells[row]?.[0]);
      athletes.push({ name, before: scoreBefore, after: scoreAfter });
    }
    const changes = scoreSquad(athletes, { ...test, typicalError });
    return zip(athletes, changes).map(([{ name }, change]) => ({ athlete: name, ...change }));
  },
);
