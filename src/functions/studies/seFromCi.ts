import { required, setting } from "../../cells";
import { seFromInterval } from "../../core/studies/seFromInterval";
import { lift } from "../answer";
import * as quantities from "../quantities";
import { confidenceSetting } from "../settings";

/**
 * The standard error behind a printed confidence interval of any estimate: a difference, an effect size.
 *
 * @customfunction SEFROMCI
 * @param low {@phrase intervalLow}
 * @param high {@phrase intervalHigh}
 * @param [confidence] {@phrase intervalConfidence}
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
