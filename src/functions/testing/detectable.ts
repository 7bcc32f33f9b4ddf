import { required } from "../../cells";
import { detectableDifference } from "../../core/testing/detectableDifference";
import { lift } from "../answer";
import * as quantities from "../quantities";
import { alphaSetting, powerSetting } from "../settings";

/**
 * The smallest difference between two groups of this size that a study finds with the power you ask for, in standard deviations. What a small study could not have seen, it cannot rule out.
 *
 * @customfunction DETECTABLE
 * @param nA {@phrase groupSize A}
 * @param nB {@phrase groupSize B}
 * @param [power] {@phrase power}
 * @param [alpha] {@phrase falseAlarm}
 * @returns A difference between two groups, in within-group standard deviations. The "detectable change" of RELIABILITY, and MDC, are another thing: the change of one athlete that test error alone rarely makes, in the unit of the test.
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
