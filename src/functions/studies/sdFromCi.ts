import { required } from "../../cells";
import { sdFromInterval } from "../../core/studies/sdFromInterval";
import { lift } from "../answer";
import * as quantities from "../quantities";
import { confidenceSetting } from "../settings";

/**
 * The standard deviation behind a printed confidence interval of a mean.
 *
 * @customfunction SDFROMCI
 * @param low {@phrase intervalLow}
 * @param high {@phrase intervalHigh}
 * @param n Athletes in the group, from 2.
 * @param [confidence] {@phrase intervalConfidence}
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
