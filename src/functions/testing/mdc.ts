import type { Values } from "../../cells";
import { minimalDetectableChange } from "../../core/testing/minimalDetectableChange";
import { lift } from "../answer";
import { typedLift } from "../typed";
import { errorInputs } from "./errorInputs";

/**
 * Minimal detectable change (MDC): how far two scores of one athlete must lie apart before test error alone is an unlikely explanation.
 *
 * @customfunction MDC
 * @param typicalError The typical error of the test, above 0, in the unit of the scores.
 * @param [confidence] {@phrase confidence}
 * @param [df] Degrees of freedom of the typical error, the "df" of RELIABILITY: (athletes − 1) × (trials − 1). The error is taken as known exactly if omitted.
 * @returns The MDC of one athlete, in the unit of the scores. DETECTABLE is another thing: the difference between two groups that a study finds.
 * @errors #VALUE! for a confidence that is not a fraction, such as 95.
 * @example =SPARE.MDC(2.1)
 * @source Weir 2005, J Strength Cond Res 19:231-240.
 */
export function mdc(
  typicalError: unknown[][],
  confidence?: unknown[][],
  df?: unknown[][],
): unknown[][] {
  return lift(errorInputs({ typicalError, confidence, df }), detectable);
}

const detectable = ({ typicalError, confidence, df }: Values<ReturnType<typeof errorInputs>>) =>
  minimalDetectableChange(typicalError, confidence, df);

/** The typed half of MDC: the minimal detectable change for each typical error. */
export const computeMdc = typedLift(errorInputs, detectable);
