import type { Absent } from "../problem";
import { holm } from "../statistics/holm";
import { mean } from "../statistics/moments";
import { zip } from "../zip";
import { type TrainingGroup, groupChange } from "./groupChange";

/** One measure of a battery of tests, complete pairs only. */
export interface TestMeasure {
  readonly measure: string;
  readonly a: TrainingGroup;
  readonly b: TrainingGroup;
}

/** What came of one measure. */
export interface TestTableRow {
  readonly measure: string;
  readonly nA: number;
  readonly nB: number;
  readonly beforeA: number;
  readonly afterA: number;
  readonly changeA: number;
  readonly beforeB: number;
  readonly afterB: number;
  readonly changeB: number;
  readonly adjustedDifference: number | Absent;
  /** Interval and p of the adjusted difference. */
  readonly low: number | Absent;
  readonly high: number | Absent;
  readonly p: number | Absent;
  /** The p after Holm's correction for the number of measures. */
  readonly holmP: number | Absent;
  readonly effectSize: number | Absent;
}

/**
 * Two groups over a whole battery of tests, a row a measure. Of twenty measures one comes out below 0.05 by
 * chance alone; Holm's p takes that into account. Measures without a p take no part in it.
 *
 * Source: as for `groupChange`; Holm 1979, Scand J Stat 6:65-70.
 *
 * @param measures - Two groups a measure.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns A row a measure, with Holm's p over all.
 * @throws NoAnswer where a group has nobody with both scores.
 */
export function testTable(measures: readonly TestMeasure[], confidence: number): TestTableRow[] {
  const results = measures.map(({ a, b }) => groupChange(a, b, confidence));
  const tested = results.map(({ adjustedP }) => adjustedP).filter((p) => typeof p === "number");
  const corrected = holm(tested);
  let next = 0;
  return zip(measures, results).map(([{ measure, a, b }, result]) => {
    const { adjustedP: p } = result;
    return {
      measure,
      nA: result.nA,
      nB: result.nB,
      beforeA: mean(a.before),
      afterA: mean(a.after),
      changeA: result.changeA,
      beforeB: mean(b.before),
      afterB: mean(b.after),
      changeB: result.changeB,
      adjustedDifference: result.adjustedDifference,
      low: result.adjustedLow,
      high: result.adjustedHigh,
      p,
      holmP: typeof p === "number" ? corrected[next++]! : p,
      effectSize: result.effectSize,
    };
  });
}
