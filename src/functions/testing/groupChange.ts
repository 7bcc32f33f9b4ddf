import { readRows, report } from "../../cells";
import { groupChange as compareGroups } from "../../core/testing/groupChange";
import { changesOf } from "../../core/testing/pairedChange";
import { blankUnlessGiven } from "../blankUnlessGiven";
import * as quantities from "../quantities";
import { readConfidence } from "../settings";
import { typed, type Given } from "../typed";
import { readSides, pairsOf, type Side } from "./sides";

/**
 * @customenum {string}
 */
export enum GroupChangePart {
  /** The name of group A. */
  groupA = "group A",
  /** The name of group B. */
  groupB = "group B",
  /** Athletes of A with both scores. */
  nA = "n A",
  /** Athletes of A left out because a score is missing. */
  lostA = "lost A",
  /** Mean change of A. */
  changeA = "change A",
  /** Lower end of its interval. */
  lowA = "low A",
  /** Upper end of its interval. */
  highA = "high A",
  /** The p of A's change alone; it says nothing about B. */
  pA = "p A",
  /** Athletes of B with both scores. */
  nB = "n B",
  /** Athletes of B left out because a score is missing. */
  lostB = "lost B",
  /** Mean change of B. */
  changeB = "change B",
  /** Lower end of its interval. */
  lowB = "low B",
  /** Upper end of its interval. */
  highB = "high B",
  /** The p of B's change alone; it says nothing about A. */
  pB = "p B",
  /** Change of A less change of B. */
  difference = "difference",
  /** Its standard error. */
  standardError = "standard error",
  /** Lower end of its interval. */
  low = "low",
  /** Upper end of its interval. */
  high = "high",
  /** Welch's t. */
  t = "t",
  /** Its degrees of freedom. */
  df = "df",
  /** How likely such a difference is by chance alone, two-sided. */
  p = "p",
  /** A less B from the same starting score. This is what decides. */
  adjustedDifference = "adjusted difference",
  /** Its standard error. */
  adjustedStandardError = "adjusted standard error",
  /** Lower end of its interval. */
  adjustedLow = "adjusted low",
  /** Upper end of its interval. */
  adjustedHigh = "adjusted high",
  /** Its degrees of freedom. */
  adjustedDf = "adjusted df",
  /** How likely such an adjusted difference is by chance alone, two-sided. */
  adjustedP = "adjusted p",
  /** The difference in units of the spread before, corrected for small samples. */
  effectSize = "effect size",
  /** Its standard error. */
  effectStandardError = "effect standard error",
  /** How much more the athletes of A differ in their changes than those of B, as a standard deviation. */
  extraSpread = "extra spread in A",
  /** Lower end of its interval; 0 where A may not differ more at all. */
  extraSpreadLow = "extra spread low",
  /** Upper end of its interval. */
  extraSpreadHigh = "extra spread high",
  /** How likely A's changes spread so much more by chance alone. */
  extraSpreadP = "extra spread p",
  /** What it comes to, in one sentence. */
  reading = "reading",
}

/**
 * Did one group change more than the other? What decides is the difference between the groups, from the same starting score; that one change alone has a small p and the other not says nothing about it.
 *
 * @customfunction GROUPCHANGE
 * @param group The group of each athlete; exactly two labels.
 * @param before {@phrase scoresBefore}
 * @param after {@phrase scoresAfter}
 * @param [first] {@phrase firstGroup}
 * @param [confidence] {@phrase confidence}
 * @param [part] {@phrase parts reading}
 * @returns A report of two columns: both groups, n, lost, change (low, high, p) of each; then difference, adjusted difference, effect size, extra spread in A (low, high, p) and a reading. The adjusted difference has an interval from 3 athletes in each group.
 * @errors #VALUE! for other than two labels, or naming the row for a bad cell or a score without a group; #N/A for a group without a complete pair.
 * @example =SPARE.GROUPCHANGE({"a";"a";"a";"a";"b";"b";"b";"b"}, {100;110;95;120;105;98;112;101}, {106;113;102;127;106;99;115;101}, , , "reading")
 * @example =SPARE.GROUPCHANGE(A1:A30, C1:C30, D1:D30, "east crew")
 * @source Welch 1947, Biometrika 34:28-35; Vickers and Altman 2001, BMJ 323:1123-1124, a residual variance a group (Satterthwaite 1946, Biometrics 2:110-114); extra spread: Zou and Donner 2008, Stat Med 27:1693-1702; effect size: Morris 2008, Organ Res Methods 11:364-386.
 */
export function groupChange(
  group: unknown[][],
  before: unknown[][],
  after: unknown[][],
  first?: unknown[][],
  confidence?: unknown[][],
  part?: GroupChangePart[][],
): unknown[][] {
  const result = computeGroupChange({ group, before, after, first, confidence });
  return report(GroupChangePart, part, result);
}

/** The typed half of GROUPCHANGE: the comparison, and of each group who was lost and how the others changed. */
export const computeGroupChange = typed(
  (cells: Given<"group" | "before" | "after", "first" | "confidence">) => {
    const rows = readRows(
      {
        before: { given: blankUnlessGiven(cells.before), quantity: quantities.score("before") },
        after: { given: blankUnlessGiven(cells.after), quantity: quantities.score("after") },
      },
      { group: { given: blankUnlessGiven(cells.group), name: "group" } },
    );
    const level = readConfidence(cells.confidence);
    const isThere = (row: number) => rows.isThere(row);
    const sides = readSides(rows.labels.group!, rows.firstRow, isThere, cells.first);
    const pairs = (side: Side) => pairsOf(side, rows.numbers.before!, rows.numbers.after!);
    const [a, b] = [pairs(sides[0]), pairs(sides[1])];
    return {
      ...compareGroups(a, b, level),
      lostA: a.lost,
      lostB: b.lost,
      changesA: changesOf(a.before, a.after),
      changesB: changesOf(b.before, b.after),
    };
  },
);
