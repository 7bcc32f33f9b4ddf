import { required } from "../../cells";
import { sdOfChange } from "../../core/studies/sdOfChange";
import { lift } from "../answer";
import * as quantities from "../quantities";

/**
 * The standard deviation of changes, which papers leave out, from the SDs before and after and their correlation.
 *
 * @customfunction SDCHANGE
 * @param sdBefore Standard deviation before, above 0.
 * @param sdAfter Standard deviation after, above 0, in the same unit.
 * @param correlation Correlation of before and after, −1 to 1; 0 is a value.
 * @returns The standard deviation of the changes.
 * @errors #VALUE! for a correlation outside −1 to 1.
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
