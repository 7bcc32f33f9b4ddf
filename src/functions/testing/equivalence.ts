import { required } from "../../cells";
import { equivalence as testEquivalence } from "../../core/testing/equivalence";
import { liftReport } from "../answer";
import * as quantities from "../quantities";
import { alphaSetting } from "../settings";

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
 * @param standardError {@phrase itsStandardError}
 * @param df Its degrees of freedom, above 0.
 * @param margin The smallest difference that would matter, above 0.
 * @param [alpha] A fraction below 0.5; 0.05 if omitted.
 * @param [part] {@phrase onePart reading}
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
