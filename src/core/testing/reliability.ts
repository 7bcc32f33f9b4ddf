import type { Absent } from "../problem";
import { difference } from "../statistics/compare";
import { chiSquareQuantile, requireProbability } from "../statistics/distributions";
import { meanTest } from "../statistics/meanTest";
import { iccAgreement, iccConsistency } from "./intraclass";
import { minimalDetectableChange } from "./minimalDetectableChange";
import { type TwoWayAnova, twoWayAnova } from "./twoWayAnova";

/** How far a test can be trusted. */
export interface Reliability {
  readonly n: number;
  readonly trials: number;
  /** Mean of the last trial less the first: learning or tiredness. */
  readonly shift: number;
  readonly shiftLow: number | Absent;
  readonly shiftHigh: number | Absent;
  readonly detectableChange: number;
  readonly typicalError: number;
  /** The degrees of freedom of the typical error, which MDC and CHANGESCORE ask for. */
  readonly df: number;
  readonly errorLow: number | Absent;
  readonly errorHigh: number | Absent;
  /** The typical error as a fraction of the grand mean. */
  readonly errorPercent: number | Absent;
  readonly iccConsistency: number | Absent;
  readonly iccConsistencyLow: number | Absent;
  readonly iccConsistencyHigh: number | Absent;
  readonly iccAgreement: number | Absent;
  readonly iccAgreementLow: number | Absent;
  readonly iccAgreementHigh: number | Absent;
}

/**
 * How far a test can be trusted: the same athletes (rows) tested several times (columns) with no training
 * between. The typical error is the root of the residual mean square, which with two trials is the SD of
 * the differences over √2.
 *
 * Source: Hopkins 2000, Sports Med 30:1-15; Weir 2005, J Strength Cond Res 19:231-240.
 *
 * @param rows - A row an athlete with a score a trial, at least 2 of both.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns Typical error, shift and intraclass correlations with intervals.
 * @throws BadInput where there is one trial. NoAnswer where there is one athlete.
 */
export function reliability(rows: readonly (readonly number[])[], confidence: number): Reliability {
  requireProbability("confidence", confidence);
  const table = twoWayAnova(rows);
  const shift = meanTest(
    rows.map((row) => difference(row[row.length - 1]!, row[0]!)),
    confidence,
  );
  const typicalError = Math.sqrt(table.error);
  const consistency = iccConsistency(table, confidence);
  const agreement = iccAgreement(table, confidence);
  return {
    n: table.athletes,
    trials: table.trials,
    shift: shift.mean,
    shiftLow: shift.low,
    shiftHigh: shift.high,
    detectableChange:
      typicalError > 0 ? minimalDetectableChange(typicalError, confidence, table.errorDf) : 0,
    typicalError,
    df: table.errorDf,
    ...errorInterval(table, confidence),
    errorPercent:
      table.grandMean > 0
        ? typicalError / table.grandMean
        : { absent: "a percent error needs a mean above 0" },
    iccConsistency: consistency.icc,
    iccConsistencyLow: consistency.low,
    iccConsistencyHigh: consistency.high,
    iccAgreement: agreement.icc,
    iccAgreementLow: agreement.low,
    iccAgreementHigh: agreement.high,
  };
}

/** The chi-square interval of the typical error. */
function errorInterval(
  { error, errorDf }: TwoWayAnova,
  confidence: number,
): Pick<Reliability, "errorLow" | "errorHigh"> {
  if (error === 0) {
    const none = { absent: "the trials agree exactly, so there is no error to judge by" };
    return { errorLow: none, errorHigh: none };
  }
  const bound = (p: number): number => Math.sqrt((errorDf * error) / chiSquareQuantile(p, errorDf));
  return { errorLow: bound((1 + confidence) / 2), errorHigh: bound((1 - confidence) / 2) };
}
