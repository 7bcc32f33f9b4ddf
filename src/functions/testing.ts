import { required, setting } from "../cells";
import { changeScore as scoreChange } from "../core/testing/changeScore";
import { minimalDetectableChange } from "../core/testing/minimalDetectableChange";
import { lift, liftRow } from "./answer";
import * as quantities from "./quantities";

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

/** A typical error, and what is made of it. */
function errorInputs(typicalError: unknown, confidence: unknown, df: unknown) {
  return {
    typicalError: required(
      typicalError,
      quantities.above0("typicalError", "a typical error above 0"),
    ),
    confidence: setting(confidence, quantities.confidence(), quantities.USUAL_CONFIDENCE),
    df: setting(df, quantities.degreesOfFreedom(), undefined),
  };
}
