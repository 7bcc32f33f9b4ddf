import {
  isGiven,
  partsOr,
  readList,
  readOne,
  report,
  required,
  setting,
  single,
  table,
} from "../cells";
import { doseResponse as regress, effectsAtDoses } from "../core/studies/doseResponse";
import { poolStudies as pool } from "../core/studies/poolStudies";
import { sdFromInterval } from "../core/studies/sdFromInterval";
import { sdOfChange } from "../core/studies/sdOfChange";
import { seFromInterval } from "../core/studies/seFromInterval";
import { studyChangeDifference } from "../core/studies/studyChangeDifference";
import { studyDifference } from "../core/studies/studyDifference";
import { worthChanging as judge } from "../core/studies/worthChanging";
import { lift, liftReport } from "./answer";
import { readWholeRows } from "./pairs";
import * as quantities from "./quantities";
import { confidenceSetting, readConfidence, readWord } from "./settings";

/**
 * @customenum {string}
 */
export enum StudyDiffPart {
  /** Mean of A less mean of B, in the paper's units. */
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
  /** Hedges' g: the difference over the pooled SD, corrected for small samples. */
  effectSize = "effect size",
  /** Its standard error, for POOLSTUDIES. */
  effectStandardError = "effect standard error",
  /** Lower end of the effect size's interval. */
  effectLow = "effect low",
  /** Upper end of the effect size's interval. */
  effectHigh = "effect high",
}

/**
 * The difference of two groups from what a paper's table prints: means, SDs and group sizes. As an effect size it goes straight into POOLSTUDIES.
 *
 * @customfunction STUDYDIFF
 * @param meanA Mean of group A; 0 is a value.
 * @param sdA Standard deviation of group A, above 0.
 * @param nA Athletes in group A, from 2.
 * @param meanB Mean of group B.
 * @param sdB Standard deviation of group B, above 0.
 * @param nB Athletes in group B, from 2.
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
 * @param [part] One label, such as "effect size"; with it the inputs may be ranges.
 * @returns A report of two columns: difference, standard error, low, high, t, df, p, effect size, effect standard error, effect low, effect high.
 * @errors #VALUE! for a spread or a group size that cannot be.
 * @example =SPARE.STUDYDIFF(103, 5.5, 50, 100, 4.5, 50)
 * @example =SPARE.STUDYDIFF(B2:B6, C2:C6, D2:D6, E2:E6, F2:F6, G2:G6, , "effect size")
 * @source Welch 1947, Biometrika 34:28-35; Hedges 1981, J Educ Stat 6:107-128.
 */
export function studyDiff(
  meanA: unknown[][],
  sdA: unknown[][],
  nA: unknown[][],
  meanB: unknown[][],
  sdB: unknown[][],
  nB: unknown[][],
  confidence?: unknown[][],
  part?: StudyDiffPart[][],
): unknown[][] {
  return liftReport(
    {
      meanA: required(meanA, quantities.anyNumber("meanA", "a mean")),
      sdA: required(sdA, quantities.spread("sdA")),
      nA: required(nA, quantities.groupSize("nA")),
      meanB: required(meanB, quantities.anyNumber("meanB", "a mean")),
      sdB: required(sdB, quantities.spread("sdB")),
      nB: required(nB, quantities.groupSize("nB")),
      confidence: confidenceSetting(confidence),
    },
    StudyDiffPart,
    part,
    ({ meanA, sdA, nA, meanB, sdB, nB, confidence }) =>
      studyDifference({ mean: meanA, sd: sdA, n: nA }, { mean: meanB, sd: sdB, n: nB }, confidence),
  );
}

/**
 * @customenum {string}
 */
export enum StudyChangeDiffPart {
  /** Change of A less change of B, in the paper's units. */
  difference = "difference",
  /** It in units of the pooled SD before, corrected for small samples. */
  effectSize = "effect size",
  /** Its standard error, for POOLSTUDIES. */
  effectStandardError = "effect standard error",
  /** Lower end of the effect size's interval. */
  effectLow = "effect low",
  /** Upper end of the effect size's interval. */
  effectHigh = "effect high",
}

/**
 * How much more one group changed than the other, from a paper's before-and-after table. Papers seldom print the correlation of before and after; try several, it touches the standard error only.
 *
 * @customfunction STUDYCHANGEDIFF
 * @param beforeA Mean of group A before.
 * @param afterA Mean of group A after.
 * @param sdBeforeA Standard deviation of group A before, above 0.
 * @param nA Athletes in group A, from 2.
 * @param beforeB Mean of group B before.
 * @param afterB Mean of group B after.
 * @param sdBeforeB Standard deviation of group B before, above 0.
 * @param nB Athletes in group B, from 2.
 * @param correlation Correlation of before and after, -1 to 1; a range of them where part is given.
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
 * @param [part] One label, such as "effect size"; with it the inputs may be ranges.
 * @returns A report of two columns: difference, effect size, effect standard error, effect low, effect high.
 * @errors #N/A under 5 athletes in all; #VALUE! for a spread, a group size or a correlation that cannot be.
 * @example =SPARE.STUDYCHANGEDIFF(30.6, 38.5, 15, 20, 23.1, 19.7, 13.8, 20, 0.47)
 * @source Morris 2008, Organ Res Methods 11:364-386.
 */
export function studyChangeDiff(
  beforeA: unknown[][],
  afterA: unknown[][],
  sdBeforeA: unknown[][],
  nA: unknown[][],
  beforeB: unknown[][],
  afterB: unknown[][],
  sdBeforeB: unknown[][],
  nB: unknown[][],
  correlation: unknown[][],
  confidence?: unknown[][],
  part?: StudyChangeDiffPart[][],
): unknown[][] {
  return liftReport(
    {
      beforeA: required(beforeA, quantities.anyNumber("beforeA", "a mean")),
      afterA: required(afterA, quantities.anyNumber("afterA", "a mean")),
      sdBeforeA: required(sdBeforeA, quantities.spread("sdBeforeA")),
      nA: required(nA, quantities.groupSize("nA")),
      beforeB: required(beforeB, quantities.anyNumber("beforeB", "a mean")),
      afterB: required(afterB, quantities.anyNumber("afterB", "a mean")),
      sdBeforeB: required(sdBeforeB, quantities.spread("sdBeforeB")),
      nB: required(nB, quantities.groupSize("nB")),
      correlation: required(correlation, quantities.correlation()),
      confidence: confidenceSetting(confidence),
    },
    StudyChangeDiffPart,
    part,
    (study) =>
      studyChangeDifference(
        { before: study.beforeA, after: study.afterA, sdBefore: study.sdBeforeA, n: study.nA },
        { before: study.beforeB, after: study.afterB, sdBefore: study.sdBeforeB, n: study.nB },
        study.correlation,
        study.confidence,
      ),
  );
}

/**
 * The standard deviation of changes, which papers leave out, from the SDs before and after and their correlation.
 *
 * @customfunction SDCHANGE
 * @param sdBefore Standard deviation before, above 0.
 * @param sdAfter Standard deviation after, above 0, in the same unit.
 * @param correlation Correlation of before and after, -1 to 1; 0 is a value.
 * @returns The standard deviation of the changes.
 * @errors #VALUE! for a correlation outside -1 to 1.
 * @example =SPARE.SDCHANGE(2.38, 2.21, 0.68)
 * @source Cochrane Handbook for Systematic Reviews of Interventions, chapter 6.
 */
export function sdChange(
  sdBefore: unknown[][],
  sdAfter: unknown[][],
  correlation: unknown[][],
): unknown[][] {
  return lift(
    {
      sdBefore: required(sdBefore, quantities.spread("sdBefore")),
      sdAfter: required(sdAfter, quantities.spread("sdAfter")),
      correlation: required(correlation, quantities.correlation()),
    },
    ({ sdBefore, sdAfter, correlation }) => sdOfChange(sdBefore, sdAfter, correlation),
  );
}

/**
 * The standard deviation behind a printed confidence interval of a mean.
 *
 * @customfunction SDFROMCI
 * @param low Lower end of the interval; 0 is a value.
 * @param high Upper end of the interval, above low.
 * @param n Athletes in the group, from 2.
 * @param [confidence] The interval's confidence, a fraction; 0.95 if omitted.
 * @returns The standard deviation, in the unit of the interval.
 * @errors #VALUE! where low is not below high.
 * @example =SPARE.SDFROMCI(35, 41.5, 12)
 * @source Cochrane Handbook for Systematic Reviews of Interventions, chapter 6: Student's t on n − 1 degrees of freedom.
 */
export function sdFromCi(
  low: unknown[][],
  high: unknown[][],
  n: unknown[][],
  confidence?: unknown[][],
): unknown[][] {
  return lift(
    {
      low: required(low, quantities.anyNumber("low")),
      high: required(high, quantities.anyNumber("high")),
      n: required(n, quantities.groupSize("n")),
      confidence: confidenceSetting(confidence),
    },
    ({ low, high, n, confidence }) => sdFromInterval(low, high, n, confidence),
  );
}

/**
 * The standard error behind a printed confidence interval of any estimate: a difference, an effect size.
 *
 * @customfunction SEFROMCI
 * @param low Lower end of the interval; 0 is a value.
 * @param high Upper end of the interval, above low.
 * @param [confidence] The interval's confidence, a fraction; 0.95 if omitted.
 * @param [df] Degrees of freedom, where the interval is one of Student's t; normal if omitted.
 * @returns The standard error, in the unit of the interval.
 * @errors #VALUE! where low is not below high.
 * @example =SPARE.SEFROMCI(0.2, 0.9)
 * @source Cochrane Handbook for Systematic Reviews of Interventions, chapter 6.
 */
export function seFromCi(
  low: unknown[][],
  high: unknown[][],
  confidence?: unknown[][],
  df?: unknown[][],
): unknown[][] {
  return lift(
    {
      low: required(low, quantities.anyNumber("low")),
      high: required(high, quantities.anyNumber("high")),
      confidence: confidenceSetting(confidence),
      df: setting(df, quantities.degreesOfFreedom(), undefined),
    },
    // Desktop Excel passes a row that is not filled in yet as two zeros.
    ({ low, high, confidence, df }) =>
      low === 0 && high === 0 ? "" : seFromInterval(low, high, confidence, df),
  );
}

/**
 * @customenum {string}
 */
export enum PoolMethodChoice {
  /** Random effects, restricted maximum likelihood. The usual one. */
  reml = "reml",
  /** Random effects, DerSimonian and Laird's moments. */
  dl = "dl",
  /** One common effect, no spread between studies. */
  fixed = "fixed",
}

/**
 * @customenum {string}
 */
export enum IntervalChoice {
  /** Student's t, Hartung and Knapp's standard error. The usual one. */
  t = "t",
  /** Normal, the model's own standard error. */
  z = "z",
}

/**
 * @customenum {string}
 */
export enum PoolStudiesPart {
  /** How many studies. */
  studies = "studies",
  /** The pooled effect. */
  estimate = "estimate",
  /** Its standard error. */
  standardError = "standard error",
  /** Lower end of its interval. */
  low = "low",
  /** Upper end of its interval. */
  high = "high",
  /** Estimate over standard error. */
  statistic = "statistic",
  /** How likely such an estimate is without any effect, two-sided. */
  p = "p",
  /** How much true effects differ between studies, as a standard deviation. */
  betweenStudySd = "between-study sd",
  /** That, squared. */
  betweenStudyVariance = "between-study variance",
  /** The share of the scatter that lies between studies (I squared), a fraction. */
  shareBetweenStudies = "share between studies",
  /** Cochran's Q. */
  q = "q",
  /** The chance of so large a Q from studies that differ by chance alone. */
  qP = "q p",
  /** Lower end of where one more study's true effect would lie. */
  predictLow = "predict low",
  /** Upper end of where one more study's true effect would lie. */
  predictHigh = "predict high",
}

/**
 * Pools the effects of several studies into one, and says how much studies differ: the prediction interval is where the next study, or your squad, would lie.
 *
 * @customfunction POOLSTUDIES
 * @param effects The studies' effects, a row a study; 0 is a value.
 * @param standardErrors Their standard errors, above 0; a row without one is not there.
 * @param [method] "reml" if omitted, "dl" or "fixed".
 * @param [interval] "t" if omitted (Hartung and Knapp), or "z". "fixed" is always "z".
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
 * @param [part] One label, such as "estimate", or a range of labels, for those values alone.
 * @returns A report of two columns: studies, estimate, standard error, low, high, statistic, p, between-study sd and variance, share between studies, q, q p, predict low, predict high.
 * @errors #N/A without a study; #VALUE! naming the row for a bad cell.
 * @example =SPARE.POOLSTUDIES({0.31;0.12;0.55;0.2;0.43}, {0.15;0.22;0.3;0.12;0.25})
 * @source REML: Harville 1977; Hartung and Knapp 2001, Stat Med 20:3875-3889; DerSimonian and Laird 1986; prediction: Higgins, Thompson and Spiegelhalter 2009.
 */
export function poolStudies(
  effects: unknown[][],
  standardErrors: unknown[][],
  method?: PoolMethodChoice[][],
  interval?: IntervalChoice[][],
  confidence?: unknown[][],
  part?: PoolStudiesPart[][],
): unknown[][] {
  const { columns } = readStudies(effects, standardErrors);
  const options = {
    method: readWord(method, "method", PoolMethodChoice, PoolMethodChoice.reml),
    interval: readWord(interval, "interval", IntervalChoice, IntervalChoice.t),
    confidence: readConfidence(confidence),
  };
  return report(PoolStudiesPart, part, pool(columns.effects, columns.standardErrors, options));
}

/**
 * @customenum {string}
 */
export enum DoseResponsePart {
  /** How many studies. */
  studies = "studies",
  /** The effect at dose 0. */
  intercept = "intercept",
  /** How much the effect rises for one more unit of dose. */
  slope = "slope",
  /** Its standard error. */
  slopeStandardError = "slope standard error",
  /** Lower end of the slope's interval. */
  low = "low",
  /** Upper end of the slope's interval. */
  high = "high",
  /** Slope over standard error. */
  statistic = "statistic",
  /** How likely such a slope is without any, two-sided. */
  p = "p",
  /** How much studies of one dose differ, as a standard deviation. */
  betweenStudySd = "between-study sd",
}

/**
 * Does more of it do more? A straight line of the studies' effects on their doses (sets a week, reps in reserve), each study weighted by its precision.
 *
 * @customfunction DOSERESPONSE
 * @param doses The studies' doses, a row a study; 0 is a value.
 * @param effects Their effects; 0 is a value.
 * @param standardErrors Their standard errors, above 0; a row without one is not there.
 * @param [at] Doses, a row or a column, at which to give the effect; the result is then a table.
 * @param [interval] "t" if omitted (Knapp and Hartung), or "z".
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
 * @param [part] One label, such as "slope", or a range of labels, for those values alone.
 * @returns A report of two columns: studies, intercept, slope, slope standard error, low, high, statistic, p, between-study sd. With at, a table: dose, estimate, low, high.
 * @errors #N/A under 3 studies, or without 2 different doses; #VALUE! naming the row for a bad cell.
 * @example =SPARE.DOSERESPONSE({0;1;2;3;4}, {0.55;0.5;0.38;0.35;0.2}, {0.15;0.2;0.18;0.12;0.2})
 * @source Random-effects meta-regression by REML; Knapp and Hartung 2003, Stat Med 22:2693-2710.
 */
export function doseResponse(
  doses: unknown[][],
  effects: unknown[][],
  standardErrors: unknown[][],
  at?: unknown[][],
  interval?: IntervalChoice[][],
  confidence?: unknown[][],
  part?: DoseResponsePart[][],
): unknown[][] {
  const dose = quantities.anyNumber("doses", "a dose");
  const { columns } = readStudies(effects, standardErrors, {
    doses: { given: doses ?? "", quantity: dose },
  });
  const studies = [columns.doses, columns.effects, columns.standardErrors] as const;
  const options = {
    interval: readWord(interval, "interval", IntervalChoice, IntervalChoice.t),
    confidence: readConfidence(confidence),
  };
  const wanted = isGiven(at) ? readList(at, { ...dose, name: "at" }) : [];
  const line = regress(...studies, options);
  return partsOr(DoseResponsePart, part, line, () =>
    wanted.length === 0
      ? report(DoseResponsePart, part, line)
      : table(
          ["dose", "estimate", "low", "high"],
          effectsAtDoses(...studies, wanted, options).map((row) => [
            row.dose,
            row.estimate,
            row.low,
            row.high,
          ]),
        ),
  );
}

/**
 * @customenum {string}
 */
export enum WorthChangingPart {
  /** The mean effect of the earlier studies. */
  before = "before",
  /** Lower end of where one more study would have lain. */
  beforeLow = "before low",
  /** Upper end of where one more study would have lain. */
  beforeHigh = "before high",
  /** The new study's effect, drawn toward what the earlier ones led one to expect. */
  shrunkNewStudy = "shrunk new study",
  /** Lower end of its interval. */
  shrunkLow = "shrunk low",
  /** Upper end of its interval. */
  shrunkHigh = "shrunk high",
  /** What your squad can expect to gain, in its own units. */
  expectedGain = "expected gain",
  /** Lower end of the gain's prediction. */
  gainLow = "gain low",
  /** Upper end of the gain's prediction. */
  gainHigh = "gain high",
  /** The chance that the gain is above the smallest that matters. */
  chanceWorthIt = "chance worth it",
  /** The chance of a loss larger than the smallest that matters. */
  chanceHarmful = "chance harmful",
  /** "change", "keep" or "test it first". */
  reading = "reading",
}

/**
 * Should the next block change, now that a new study is out? Reads it in the light of the earlier ones, and predicts what one more squad, yours, would gain.
 *
 * @customfunction WORTHCHANGING
 * @param effects The earlier studies' standardized effects, a row a study.
 * @param standardErrors Their standard errors, above 0; a row without one is not there.
 * @param newEffect The new study's effect, on the same scale; 0 is a value.
 * @param newStandardError Its standard error, above 0.
 * @param squadSd The spread between your athletes, above 0: it turns the effect into your units.
 * @param smallest The smallest gain worth a change, in your units, 0 or more.
 * @param [confidence] A fraction between 0 and 1; 0.95 if omitted.
 * @param [part] One label, such as "reading", or a range of labels, for those values alone.
 * @returns A report of two columns: before (low, high), shrunk new study (low, high), expected gain (low, high), chance worth it, chance harmful, reading.
 * @errors #N/A under 2 earlier studies; #VALUE! naming the row for a bad cell.
 * @example =SPARE.WORTHCHANGING({0.31;0.12;0.55;0.2;0.43}, {0.15;0.22;0.3;0.12;0.25}, 0.6, 0.2, 8, 1)
 * @source Higgins, Thompson and Spiegelhalter 2009, J R Stat Soc A 172:137-159; the limits of the reading (0.8, 0.05, 0.2) are ours.
 */
export function worthChanging(
  effects: unknown[][],
  standardErrors: unknown[][],
  newEffect: unknown[][],
  newStandardError: unknown[][],
  squadSd: unknown[][],
  smallest: unknown[][],
  confidence?: unknown[][],
  part?: WorthChangingPart[][],
): unknown[][] {
  const { columns } = readStudies(effects, standardErrors);
  const effect = readOne(required(newEffect, quantities.anyNumber("newEffect", "an effect")));
  const standardError = readOne(required(newStandardError, quantities.spread("newStandardError")));
  const sd = readOne(required(squadSd, quantities.spread("squadSd")));
  const smallestGain = quantities.atLeast0("smallest", "a gain of 0 or more");
  const least = readOne(required(smallest, smallestGain));
  const level = readConfidence(confidence);
  if (effect === null || standardError === null || sd === null || least === null) {
    return single("");
  }
  const gain = judge(columns, { effect, standardError }, { sd, smallest: least }, level);
  return report(WorthChangingPart, part, gain);
}

/** Studies, a row each: those with an effect and a standard error, and whatever else is asked for. */
const readStudies = <K extends string = never>(
  effects: unknown,
  standardErrors: unknown,
  others = {} as Record<K, { given: unknown; quantity: ReturnType<typeof quantities.spread> }>,
) =>
  readWholeRows<K | "effects" | "standardErrors">({
    ...others,
    effects: { given: effects ?? "", quantity: quantities.anyNumber("effects", "an effect") },
    standardErrors: { given: standardErrors ?? "", quantity: quantities.spread("standardErrors") },
  });
