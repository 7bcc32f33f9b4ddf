import { required, setting } from "../../cells";
import { relativeStrength as relative } from "../../core/strength/relativeStrength";
import { lift } from "../answer";
import * as quantities from "../quantities";

/**
 * Strength relative to body mass: load / body mass, or load / body mass to an exponent of your choice.
 *
 * @customfunction RELATIVESTRENGTH
 * @param load The load or 1RM, above 0.
 * @param bodyMass Body mass in the same unit, above 0.
 * @param [exponent] 1 if omitted; 2/3 for the allometric scale, which lets light and heavy lifters be compared.
 * @returns Load per unit of body mass.
 * @errors #VALUE! for an exponent that is not above 0.
 * @example =SPARE.RELATIVESTRENGTH(180, 90)
 * @example =SPARE.RELATIVESTRENGTH(180, 90, 2/3)
 * @source Exponent 2/3 for strength: Jaric 2002, Sports Med 32:615-631.
 */
export function relativeStrength(
  load: unknown[][],
  bodyMass: unknown[][],
  exponent?: unknown[][],
): unknown[][] {
  return lift(
    {
      load: required(load, quantities.load()),
      bodyMass: required(bodyMass, quantities.above0("bodyMass", "a body mass above 0")),
      exponent: setting(exponent, quantities.above0("exponent", "an exponent above 0"), 1),
    },
    ({ load, bodyMass, exponent }) => relative(load, bodyMass, exponent),
  );
}
