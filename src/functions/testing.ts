import {
  blockColumns,
  choice,
  HostError,
  holdsError,
  invalid,
  isGiven,
  labelIdentity,
  keyContent,
  readCell,
  readOne,
  readRows,
  report,
  required,
  setting,
  single,
  table,
  toRange,
  type Grid,
  type Labels,
} from "../cells";
import { balancedGroups as dealGroups } from "../core/testing/balancedGroups";
import { changeScore as scoreChange } from "../core/testing/changeScore";
import { detectableDifference } from "../core/testing/detectableDifference";
import { equivalence as testEquivalence } from "../core/testing/equivalence";
import { groupChange as compareGroups, type TrainingGroup } from "../core/testing/groupChange";
import { minimalDetectableChange } from "../core/testing/minimalDetectableChange";
import { pairedChange as comparePairs } from "../core/testing/pairedChange";
import { reliability as analyseTrials } from "../core/testing/reliability";
import { responderDifference } from "../core/testing/responderDifference";
import { responders as countResponders } from "../core/testing/responders";
import { responseShare as shareOfResponse } from "../core/testing/responseShare";
import { sampleSize as sizeSample } from "../core/testing/sampleSize";
import { smallestWorthwhileChange } from "../core/testing/smallestWorthwhileChange";
import { testTable as tabulate } from "../core/testing/testTable";
import { lift, liftReport, liftRow } from "./answer";
import { readPairs, readWholeRows } from "./pairs";
import * as quantities from "./quantities";
import { alphaSetting, confidenceSetting, powerSetting, readConfidence } from "./settings";

/**
 * Minimal detectable change (MDC): how far two scores of one athlete must lie apart before test error alone is an unlikely explanation.
 *
 * @customfunction MDC
 * @param typicalError The typical error of the test, above 0, in the unit of the scores.
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
 * @param [df] Degrees of freedom of the typical error, where it comes from few athletes: (athletes − 1) × (trials − 1). Normal if omitted.
 * @returns The MDC, in the unit of the scores.
 * @errors #VALUE! for a confidence that is not a fraction, such as 95.
 * @example =SPARE.MDC(2.1)
 * @source Weir 2005, J Strength Cond Res 19:231-240.
 */
export function mdc(
  typicalError: unknown[][],
  confidence?: unknown[][],
  df?: unknown[][],
): unknown[][] {
  return lift(errorInputs(typicalError, confidence, df), ({ typicalError, confidence, df }) =>
    minimalDetectableChange(typicalError, confidence, df),
  );
}

/**
 * @customenum {string}
 */
export enum ChangeScorePart {
  /** After − before. */
  change = "change",
  /** The change as a fraction of the score before. */
  percent = "percent",
  /** The change in units of what test error alone gives. */
  ratio = "ratio",
  /** How likely such a change is from test error alone, two-sided. */
  p = "p",
  /** The chance that the true increase is more than the smallest that matters. */
  chance = "chance",
  /** The verdict in words. */
  reading = "reading",
}

/**
 * Is this athlete's change real, or could the test have wobbled? Compares the change with what test error alone does.
 *
 * @customfunction CHANGESCORE
 * @param before The score before; 0 counts as blank.
 * @param after The score after, in the same unit; 0 counts as blank.
 * @param typicalError The typical error of the test, above 0, in the same unit.
 * @param [smallest] The smallest change that matters, 0 or more; 0 if omitted.
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
 * @param [df] Degrees of freedom of the typical error; normal if omitted.
 * @param [part] One label, such as "reading", for that one value in one cell.
 * @returns A row: change, percent (a fraction), ratio, p, chance, reading ("real increase", "real decrease", "real, too small to matter" or "within test error").
 * @errors #VALUE! for a confidence that is not a fraction; "" where a score is missing ("DNS").
 * @example =SPARE.CHANGESCORE(146, 170, 7.6)
 * @example =SPARE.CHANGESCORE(B2:B15, C2:C15, 2.1, 1, , , "reading")
 * @source Weir 2005, J Strength Cond Res 19:231-240; Hopkins 2000, Sports Med 30:1-15.
 */
export function changeScore(
  before: unknown[][],
  after: unknown[][],
  typicalError: unknown[][],
  smallest?: unknown[][],
  confidence?: unknown[][],
  df?: unknown[][],
  part?: ChangeScorePart[][],
): unknown[][] {
  return liftRow(
    {
      before: required(before, quantities.score("before")),
      after: required(after, quantities.score("after")),
      smallest: setting(smallest, quantities.atLeast0("smallest", "a change of 0 or more"), 0),
      ...errorInputs(typicalError, confidence, df),
    },
    ChangeScorePart,
    part,
    scoreChange,
  );
}

/**
 * @customenum {string}
 */
export enum ReliabilityPart {
  /** Athletes with every trial. */
  n = "n",
  /** Athletes left out because a trial is missing. */
  dropped = "dropped",
  /** Trials, a column each. */
  trials = "trials",
  /** Mean of the last trial less the first: learning or tiredness. */
  shift = "shift",
  /** Lower end of the shift's interval. */
  shiftLow = "shift low",
  /** Upper end of the shift's interval. */
  shiftHigh = "shift high",
  /** The change of one athlete that test error alone rarely makes. */
  detectableChange = "detectable change",
  /** The wobble of one score, as a standard deviation. */
  typicalError = "typical error",
  /** Lower end of the typical error's interval. */
  errorLow = "error low",
  /** Upper end of the typical error's interval. */
  errorHigh = "error high",
  /** The typical error as a fraction of the mean. */
  errorPercent = "error percent",
  /** ICC(3,1): how well one trial ranks the athletes, a shift set aside. */
  iccConsistency = "icc consistency",
  /** Lower end of its interval. */
  iccConsistencyLow = "icc consistency low",
  /** Upper end of its interval. */
  iccConsistencyHigh = "icc consistency high",
  /** ICC(2,1): as consistency, but a shift between trials counts as disagreement. */
  iccAgreement = "icc agreement",
  /** Lower end of its interval. */
  iccAgreementLow = "icc agreement low",
  /** Upper end of its interval. */
  iccAgreementHigh = "icc agreement high",
}

/**
 * How far a test can be trusted: the same athletes tested several times with no training between. Its typical error goes into MDC and CHANGESCORE.
 *
 * @customfunction RELIABILITY
 * @param trials A row an athlete, a column a trial, at least two of each; 0 counts as blank.
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
 * @param [part] One label, such as "typical error", or a range of labels, for those values alone.
 * @returns A report of two columns: n, dropped, trials, shift, detectable change, typical error, error percent, and the intraclass correlations, with their intervals.
 * @errors #N/A under 2 athletes with every trial; #VALUE! naming the row for a bad cell.
 * @example =SPARE.RELIABILITY({146,140;148,152;170,152;90,99;157,145;156,153;176,167;205,218})
 * @example =SPARE.RELIABILITY(B2:C20, , "typical error")
 * @source Weir 2005, J Strength Cond Res 19:231-240; Shrout and Fleiss 1979, Psychol Bull 86:420-428; McGraw and Wong 1996, Psychol Methods 1:30-46.
 */
export function reliability(
  trials: unknown[][],
  confidence?: unknown[][],
  part?: ReliabilityPart[][],
): unknown[][] {
  const { columns, dropped } = readWholeRows(blockColumns(trials, quantities.score("trials")));
  const level = readConfidence(confidence);
  const byTrial = Object.values(columns);
  const byAthlete = byTrial[0].map((_score, row) => byTrial.map((column) => column[row]));
  return report(ReliabilityPart, part, { ...analyseTrials(byAthlete, level), dropped });
}

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
  const { columns } = readWholeRows({
    scores: { given: scores ?? "", quantity: quantities.score("scores") },
  });
  return lift({ fraction: setting(fraction, quantities.above0("fraction"), 0.2) }, ({ fraction }) =>
    smallestWorthwhileChange(columns.scores, fraction),
  );
}

/**
 * @customenum {string}
 */
export enum PairedChangePart {
  /** Athletes with both scores. */
  n = "n",
  /** Athletes left out because a score is missing. */
  dropped = "dropped",
  /** Mean score before. */
  meanBefore = "mean before",
  /** Mean score after. */
  meanAfter = "mean after",
  /** Mean change. */
  meanChange = "mean change",
  /** Spread of the changes. */
  sdOfChange = "sd of change",
  /** Standard error of the mean change. */
  standardError = "standard error",
  /** Lower end of the mean change's interval. */
  low = "low",
  /** Upper end of the mean change's interval. */
  high = "high",
  /** Student's t. */
  t = "t",
  /** Its degrees of freedom. */
  df = "df",
  /** How likely such a mean change is by chance alone, two-sided. */
  p = "p",
  /** The change in units of the spread before, corrected for small samples. */
  effectSize = "effect size",
  /** Its standard error. */
  effectStandardError = "effect standard error",
}

/**
 * Did this group change? The mean change of athletes tested before and after, with its interval and its size. One group alone cannot say that the training did it.
 *
 * @customfunction PAIREDCHANGE
 * @param before Scores before, a row an athlete; 0 counts as blank.
 * @param after Scores after, the same athletes in the same rows.
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
 * @param [part] One label, such as "mean change", or a range of labels, for those values alone.
 * @returns A report of two columns: n, dropped, mean before, mean after, mean change, sd of change, standard error, low, high, t, df, p, effect size, effect standard error.
 * @errors #N/A without a complete pair; #VALUE! naming the row for a bad cell.
 * @example =SPARE.PAIREDCHANGE({100;110;95;120;105}, {104;113;97;126;106})
 * @source Student 1908, Biometrika 6:1-25; effect size: Becker 1988, Br J Math Stat Psychol 41:257-278.
 */
export function pairedChange(
  before: unknown[][],
  after: unknown[][],
  confidence?: unknown[][],
  part?: PairedChangePart[][],
): unknown[][] {
  const { columns, dropped } = readPairs(before, after);
  const level = readConfidence(confidence);
  return report(PairedChangePart, part, {
    ...comparePairs(columns.before, columns.after, level),
    dropped,
  });
}

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
  individualResponseSd = "individual response sd",
  /** What it comes to, in one sentence. */
  reading = "reading",
}

/**
 * Did one group change more than the other? What decides is the difference between the groups, from the same starting score; that one change alone has a small p and the other not says nothing about it.
 *
 * @customfunction GROUPCHANGE
 * @param group The group of each athlete; exactly two labels.
 * @param before Scores before, a row an athlete; 0 counts as blank.
 * @param after Scores after, in the same rows.
 * @param [first] Which label is group A; the first to appear if omitted.
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
 * @param [part] One label, such as "reading", or a range of labels, for those values alone.
 * @returns A report of two columns: both groups, n, lost, change (low, high, p) of each; then difference, adjusted difference, effect size, individual response sd and a reading.
 * @errors #VALUE! for other than two labels, or naming the row for a bad cell or a score without a group; #N/A for a group without a complete pair.
 * @example =SPARE.GROUPCHANGE({"a";"a";"a";"a";"b";"b";"b";"b"}, {100;110;95;120;105;98;112;101}, {106;113;102;127;106;99;115;101}, , , "reading")
 * @example =SPARE.GROUPCHANGE(A1:A30, C1:C30, D1:D30, "east crew")
 * @source Welch 1947, Biometrika 34:28-35; Vickers and Altman 2001, BMJ 323:1123-1124; effect size: Morris 2008, Organ Res Methods 11:364-386.
 */
export function groupChange(
  group: unknown[][],
  before: unknown[][],
  after: unknown[][],
  first?: unknown[][],
  confidence?: unknown[][],
  part?: GroupChangePart[][],
): unknown[][] {
  const rows = readRows(
    {
      before: { given: before ?? "", quantity: quantities.score("before") },
      after: { given: after ?? "", quantity: quantities.score("after") },
    },
    { group: { given: group ?? "", name: "group" } },
  );
  const level = readConfidence(confidence);
  const sides = readSides(rows.labels.group!, rows.firstRow, (row) => rows.isThere(row), first);
  const [a, b] = sides.map((side) => pairsOf(side, rows.numbers.before!, rows.numbers.after!));
  return report(GroupChangePart, part, {
    ...compareGroups(a, b, level),
    lostA: a.lost,
    lostB: b.lost,
  });
}

/**
 * A paper's results table in one formula: two groups before and after over a whole battery of tests, a row a measure.
 *
 * @customfunction TESTTABLE
 * @param group The group of each athlete; exactly two labels, under a heading.
 * @param before Scores before: a column a measure, under headings that name them.
 * @param after Scores after: as many columns in the same order, under headings.
 * @param [first] Which label is group A; the first to appear if omitted.
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
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
  const columnsBefore = blockColumns(before, quantities.score("before"));
  const columnsAfter = blockColumns(after, quantities.score("after"));
  const width = Object.keys(columnsBefore).length;
  if (Object.keys(columnsAfter).length !== width) {
    throw invalid(
      `before has ${width} columns and after has ${Object.keys(columnsAfter).length}; expected as many in both`,
    );
  }
  const measures = Array.from({ length: width }, (_measure, i) => String(i));
  const rows = readRows(
    Object.fromEntries(
      measures.flatMap((i) => [
        [`before ${i}`, columnsBefore[i]],
        [`after ${i}`, columnsAfter[i]],
      ]),
    ),
    { group: { given: group ?? "", name: "group" } },
  );
  if (rows.heading("before 0") === undefined) {
    throw invalid(
      "before and after have no headings; expected a first row that names the measures",
    );
  }
  const level = readConfidence(confidence);
  const sides = readSides(rows.labels.group!, rows.firstRow, (row) => rows.isThere(row), first);
  const results = tabulate(
    measures.map((i) => {
      const [a, b] = sides.map((side) =>
        pairsOf(side, rows.numbers[`before ${i}`]!, rows.numbers[`after ${i}`]!),
      );
      return { measure: rows.heading(`before ${i}`)!, a, b };
    }),
    level,
  );
  return table(
    TEST_TABLE.map(([heading]) => heading),
    results.map((row) => TEST_TABLE.map(([, key]) => row[key])),
  );
}

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

/**
 * @customenum {string}
 */
export enum RespondersPart {
  /** Athletes with both scores. */
  n = "n",
  /** Athletes left out because a score is missing. */
  dropped = "dropped",
  /** Athletes who changed by more than the threshold. */
  responders = "responders",
  /** Their share. */
  share = "share",
  /** Lower end of the share's interval. */
  low = "low",
  /** Upper end of the share's interval. */
  high = "high",
  /** Athletes who did not increase at all. */
  noIncrease = "no increase",
}

/**
 * How many athletes changed by more than a threshold. Some pass it by test error alone: see RESPONSESHARE.
 *
 * @customfunction RESPONDERS
 * @param before Scores before, a row an athlete; 0 counts as blank.
 * @param after Scores after, the same athletes in the same rows.
 * @param threshold The change to exceed, in the unit of the scores; 0 is a value.
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
 * @param [part] One label, such as "share", or a range of labels, for those values alone.
 * @returns A report of two columns: n, dropped, responders, share (a fraction), low, high, no increase.
 * @errors #N/A without a complete pair; #VALUE! naming the row for a bad cell.
 * @example =SPARE.RESPONDERS({100;110;95;120;105}, {104;113;97;126;106}, 2.5)
 * @source Interval: Wilson 1927, J Am Stat Assoc 22:209-212.
 */
export function responders(
  before: unknown[][],
  after: unknown[][],
  threshold: unknown[][],
  confidence?: unknown[][],
  part?: RespondersPart[][],
): unknown[][] {
  const { columns, dropped } = readPairs(before, after);
  const limit = readOne(required(threshold, quantities.anyNumber("threshold", "a change")));
  const level = readConfidence(confidence);
  if (limit === null) return single("");
  return report(RespondersPart, part, {
    ...countResponders(columns.before, columns.after, limit, level),
    dropped,
  });
}

/**
 * @customenum {string}
 */
export enum ResponderDiffPart {
  /** Share of A. */
  shareA = "share A",
  /** Share of B. */
  shareB = "share B",
  /** Share of A less share of B. */
  difference = "difference",
  /** Lower end of its interval. */
  low = "low",
  /** Upper end of its interval. */
  high = "high",
  /** Fisher's exact p, two-sided. */
  p = "p",
}

/**
 * Did more athletes respond in one group than in the other? The difference of two shares, with an interval that is right for small groups too.
 *
 * @customfunction RESPONDERDIFF
 * @param respondersA How many of group A responded, 0 or more.
 * @param nA Athletes in group A.
 * @param respondersB How many of group B responded, 0 or more.
 * @param nB Athletes in group B.
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
 * @param [part] One label, such as "difference"; with it the inputs may be ranges.
 * @returns A report of two columns: share A, share B, difference, low, high, p.
 * @errors #VALUE! for more responders than athletes.
 * @example =SPARE.RESPONDERDIFF(9, 10, 3, 10)
 * @source Newcombe 1998, Stat Med 17:873-890, method 10; p: Fisher's exact test.
 */
export function responderDiff(
  respondersA: unknown[][],
  nA: unknown[][],
  respondersB: unknown[][],
  nB: unknown[][],
  confidence?: unknown[][],
  part?: ResponderDiffPart[][],
): unknown[][] {
  return liftReport(
    {
      respondersA: required(respondersA, quantities.count("respondersA")),
      nA: required(nA, quantities.groupSize("nA", 1)),
      respondersB: required(respondersB, quantities.count("respondersB")),
      nB: required(nB, quantities.groupSize("nB", 1)),
      confidence: confidenceSetting(confidence),
    },
    ResponderDiffPart,
    part,
    ({ respondersA, nA, respondersB, nB, confidence }) =>
      responderDifference(respondersA, nA, respondersB, nB, confidence),
  );
}

/**
 * @customenum {string}
 */
export enum ResponseSharePart {
  /** The share of observed changes above the threshold. */
  observedShare = "observed share",
  /** The share that test error alone would put above it, had everyone changed by the mean. */
  shareIfAllAlike = "share if all alike",
  /** The share of true changes above it, test error taken out. */
  shareWithoutNoise = "share without noise",
  /** The spread of the true changes. */
  trueSd = "true sd",
  /** What it comes to, in one sentence. */
  reading = "reading",
}

/**
 * How many athletes pass a threshold, and how much of that test error does by itself: a squad in which everyone gained the same still shows "responders" and "non-responders".
 *
 * @customfunction RESPONSESHARE
 * @param meanChange The mean change of the squad; 0 is a value.
 * @param sdChange The standard deviation of the changes, above 0.
 * @param typicalError The typical error of the test, above 0, in the same unit.
 * @param threshold The change to exceed; 0 is a value.
 * @param [part] One label, such as "share without noise"; with it the inputs may be ranges.
 * @returns A report of two columns: observed share, share if all alike, share without noise, true sd, reading. Shares are fractions.
 * @errors #N/A for a part that does not exist because the changes spread no more than test error makes them.
 * @example =SPARE.RESPONSESHARE(5, 6, 2.5, 4)
 * @source Atkinson and Batterham 2015, Exp Physiol 100:577-588; Swinton et al. 2018, Front Nutr 5:41.
 */
export function responseShare(
  meanChange: unknown[][],
  sdChange: unknown[][],
  typicalError: unknown[][],
  threshold: unknown[][],
  part?: ResponseSharePart[][],
): unknown[][] {
  return liftReport(
    {
      meanChange: required(meanChange, quantities.anyNumber("meanChange", "a mean change")),
      sdChange: required(sdChange, quantities.spread("sdChange")),
      typicalError: required(typicalError, quantities.spread("typicalError")),
      threshold: required(threshold, quantities.anyNumber("threshold", "a change")),
    },
    ResponseSharePart,
    part,
    ({ meanChange, sdChange, typicalError, threshold }) =>
      shareOfResponse(meanChange, sdChange, typicalError, threshold),
  );
}

/**
 * @customenum {string}
 */
export enum EquivalencePart {
  /** Against a difference of −margin or lower. */
  pLowSide = "p low side",
  /** Against a difference of margin or higher. */
  pHighSide = "p high side",
  /** The larger of the two: both must be ruled out. */
  p = "p",
  /** Lower end of the 1 − 2 alpha interval. */
  low = "low",
  /** Upper end of the 1 − 2 alpha interval. */
  high = "high",
  /** What it comes to, in words. */
  reading = "reading",
}

/**
 * Is a difference small enough to call two programs the same? "No difference shown" is not "the same": this rules out a difference of the margin or more, on both sides.
 *
 * @customfunction EQUIVALENCE
 * @param difference The difference, such as from GROUPCHANGE or STUDYDIFF; 0 is a value.
 * @param standardError Its standard error, above 0.
 * @param df Its degrees of freedom, above 0.
 * @param margin The smallest difference that would matter, above 0.
 * @param [alpha] A fraction below 0.5; 0.05 if omitted.
 * @param [part] One label, such as "reading"; with it the inputs may be ranges.
 * @returns A report of two columns: p low side, p high side, p, low, high, reading.
 * @errors #VALUE! for an alpha of 0.5 and more.
 * @example =SPARE.EQUIVALENCE(0.4, 0.9, 26, 2.5)
 * @source Two one-sided tests: Schuirmann 1987, J Pharmacokinet Biopharm 15:657-680.
 */
export function equivalence(
  difference: unknown[][],
  standardError: unknown[][],
  df: unknown[][],
  margin: unknown[][],
  alpha?: unknown[][],
  part?: EquivalencePart[][],
): unknown[][] {
  return liftReport(
    {
      difference: required(difference, quantities.anyNumber("difference", "a difference")),
      standardError: required(standardError, quantities.spread("standardError")),
      df: required(df, quantities.degreesOfFreedom()),
      margin: required(margin, quantities.above0("margin", "a difference above 0")),
      alpha: alphaSetting(alpha),
    },
    EquivalencePart,
    part,
    ({ difference, standardError, df, margin, alpha }) =>
      testEquivalence(difference, standardError, df, margin, alpha),
  );
}

/**
 * @customenum {string}
 */
export enum DesignChoice {
  /** Two groups, compared with each other. The usual one. */
  twoGroups = "two groups",
  /** The same athletes twice. */
  paired = "paired",
}

/**
 * How many athletes a study needs: per group, or how many pairs, to find a difference with the power you ask for.
 *
 * @customfunction SAMPLESIZE
 * @param difference The difference worth finding, its sign does not matter; not 0.
 * @param sd The standard deviation within a group, or of the changes where design is "paired"; above 0, in the same unit.
 * @param [power] The chance to find it, a fraction; 0.8 if omitted.
 * @param [alpha] The chance of a false alarm, two-sided, a fraction; 0.05 if omitted.
 * @param [design] "two groups" if omitted, or "paired".
 * @param [correlation] Correlation of before and after, where two groups are compared from the same starting score: fewer athletes will do. Not with "paired".
 * @param [dropout] The fraction of athletes expected to drop out; 0 if omitted.
 * @returns Athletes per group, or pairs; at least 2, rounded up.
 * @errors #VALUE! for a correlation with "paired", or a fraction that is none.
 * @example =SPARE.SAMPLESIZE(0.5, 1)
 * @example =SPARE.SAMPLESIZE(5, 10, 0.8, 0.05, "two groups", 0.7, 0.2)
 * @source Cohen 1988, Statistical Power Analysis; correlation: Borm et al. 2007, J Clin Epidemiol 60:1234-1238.
 */
export function sampleSize(
  difference: unknown[][],
  sd: unknown[][],
  power?: unknown[][],
  alpha?: unknown[][],
  design?: DesignChoice[][],
  correlation?: unknown[][],
  dropout?: unknown[][],
): unknown[][] {
  const share = {
    ...quantities.atLeast0("dropout", "a fraction from 0 to below 1, such as 0.2"),
    accepts: (value: number) => value >= 0 && value < 1,
  };
  return lift(
    {
      difference: required(difference, quantities.score("difference", "a difference, not 0")),
      sd: required(sd, quantities.spread("sd")),
      power: powerSetting(power),
      alpha: alphaSetting(alpha),
      design: choice(design, "design", DesignChoice, DesignChoice.twoGroups),
      correlation: setting(correlation, quantities.correlation(), undefined),
      dropout: setting(dropout, share, 0),
    },
    sizeSample,
  );
}

/**
 * The smallest difference that two groups of this size find with the power you ask for, in standard deviations. What a small study could not have seen, it cannot rule out.
 *
 * @customfunction DETECTABLE
 * @param nA Athletes in group A, from 2.
 * @param nB Athletes in group B, from 2.
 * @param [power] The chance to find it, a fraction; 0.8 if omitted.
 * @param [alpha] The chance of a false alarm, two-sided, a fraction; 0.05 if omitted.
 * @returns A difference in within-group standard deviations.
 * @errors #VALUE! for a power that is not above alpha.
 * @example =SPARE.DETECTABLE(12, 12)
 * @source Cohen 1988, Statistical Power Analysis; by the noncentral t distribution.
 */
export function detectable(
  nA: unknown[][],
  nB: unknown[][],
  power?: unknown[][],
  alpha?: unknown[][],
): unknown[][] {
  return lift(
    {
      nA: required(nA, quantities.groupSize("nA")),
      nB: required(nB, quantities.groupSize("nB")),
      power: powerSetting(power),
      alpha: alphaSetting(alpha),
    },
    ({ nA, nB, power, alpha }) => detectableDifference(nA, nB, power, alpha),
  );
}

/**
 * Splits a squad into groups that match on score: ranked, and dealt by lot within each run of like athletes. Paste the letters as values once they are drawn, so that a later edit does not deal again.
 *
 * @customfunction BALANCEDGROUPS
 * @param scores Scores, a row an athlete; several columns count as their mean z-score; 0 counts as blank.
 * @param [groups] How many groups, 2 to 26; 2 if omitted.
 * @param [strata] A label a row, such as sex or boat, within which to balance.
 * @param [seed] Any number; the same seed gives the same split; 1 if omitted.
 * @returns A group letter beside each row; "" beside a heading and where a score is missing.
 * @errors #VALUE! naming the row for a bad cell, or for more than 26 groups.
 * @example =SPARE.BALANCEDGROUPS({140;155;120;132;148;126}, 2)
 * @source Stratified randomization: common practice, no source.
 */
export function balancedGroups(
  scores: unknown[][],
  groups?: unknown[][],
  strata?: unknown[][],
  seed?: unknown[][],
): unknown[][] {
  const columns = blockColumns(scores, quantities.score("scores"));
  const rows = readRows(columns, { strata: { given: strata, name: "strata", canBeBlank: true } });
  const count = quantities.whole("groups", "a whole number of groups, 2 to 26", 26);
  const numberOfGroups = readOne(
    setting(groups, { ...count, accepts: (value) => count.accepts(value) && value >= 2 }, 2),
  )!;
  const seedNumber = readOne(setting(seed, quantities.score("seed", "a number"), 1))!;
  const whole: { row: number; scores: number[] }[] = [];
  for (let row = 0; row < rows.count; row++) {
    const values = Object.keys(columns).map((key) => rows.numbers[key]![row]);
    if (values.every((value) => value !== null)) whole.push({ row, scores: values });
  }
  const letters = dealGroups(
    whole.map((athlete) => athlete.scores),
    numberOfGroups,
    rows.labels.strata && whole.map(({ row }) => labelAt(rows.labels.strata!, row, rows.firstRow)),
    seedNumber,
  );
  const result: Grid = Array.from({ length: rows.count + rows.firstRow - 1 }, () => [""]);
  whole.forEach(({ row }, i) => (result[row + rows.firstRow - 1] = [letters[i]]));
  return result;
}

/** One of two groups: its name as the sheet has it, and its rows. */
interface Side {
  readonly name: string;
  readonly rows: readonly number[];
}

/** Reads a column of groups that must hold exactly two labels; `first` says which of them is A. */
function readSides(
  labels: Labels,
  firstRow: number,
  isThere: (row: number) => boolean,
  first: unknown,
): [a: Side, b: Side] {
  const sides = new Map<string, { name: string; rows: number[] }>();
  labels.cells.forEach(([raw], row) => {
    const identity = labelAt(labels, row, firstRow);
    if (identity === "" || identity === "0") {
      if (!isThere(row)) return;
      throw invalid(
        `row ${row + firstRow}: group is blank beside a score; expected a group's name`,
      );
    }
    const side = sides.get(identity) ?? { name: String(keyContent(raw)).trim(), rows: [] };
    side.rows.push(row);
    sides.set(identity, side);
  });
  const found = [...sides.values()];
  if (found.length !== 2) {
    const names = found.slice(0, 5).map(({ name }) => `"${name}"`);
    const list = names.length === 0 ? "" : ` (${names.join(", ")}${found.length > 5 ? ", …" : ""})`;
    throw invalid(`group has ${found.length} labels${list}; expected exactly two`);
  }
  const wanted = isGiven(first) ? labelIdentity(readCell(oneLabel(first))) : "";
  if (wanted === "" || wanted === "0") return [found[0], found[1]];
  const a = sides.get(wanted);
  if (a === undefined) {
    throw invalid(
      `first is "${wanted}"; expected one of the groups, "${found[0].name}" or "${found[1].name}"`,
    );
  }
  return [a, found.find((side) => side !== a)!];
}

/** The one cell of an argument that names something. */
function oneLabel(argument: unknown): unknown {
  return readOne({
    name: "first",
    range: toRange(argument),
    read: (value) => (value instanceof HostError ? invalid(`first holds ${value.code}`) : value),
    header: "never",
  });
}

/** What identifies the label beside a row of data. */
function labelAt(labels: Labels, row: number, firstRow: number): string {
  const value = readCell(labels.cells[row][0]);
  if (value instanceof HostError) throw holdsError(value, row + firstRow - 1, "group");
  return labelIdentity(value);
}

/** The complete pairs of one group, and how many of its athletes have none. */
function pairsOf(
  { name, rows }: Side,
  before: readonly (number | null)[],
  after: readonly (number | null)[],
): TrainingGroup & { readonly lost: number } {
  const whole = rows.filter((row) => before[row] !== null && after[row] !== null);
  return {
    name,
    before: whole.map((row) => before[row]!),
    after: whole.map((row) => after[row]!),
    lost: rows.length - whole.length,
  };
}

/** A typical error, and what is made of it. */
function errorInputs(typicalError: unknown, confidence: unknown, df: unknown) {
  return {
    typicalError: required(
      typicalError,
      quantities.above0("typicalError", "a typical error above 0"),
    ),
    confidence: confidenceSetting(confidence),
    df: setting(df, quantities.degreesOfFreedom(), undefined),
  };
}
