import { required, setting } from "../../cells";
import { setChance as chance } from "../../core/load/setChance";
import { lift } from "../answer";
import type { EquationChoice } from "../choices";
import { equationOf } from "../equation";
import * as quantities from "../quantities";

/**
 * The chance of making a planned set, all its reps, from how well the maximum and the lifter's own curve are known. Not a chance of a safe set: it knows nothing of technique or health.
 *
 * @customfunction SETCHANCE
 * @param load The planned load, above 0, in kilograms or pounds.
 * @param reps The planned reps, from 1.
 * @param oneRepMax The 1RM or e1RM in the same unit, above 0.
 * @param [maxSd] How well that 1RM is known: its standard deviation as a fraction, above 0, such as 0.03 for 3%; 0.03 if omitted. From STRENGTHTREND at 95%: LN(high / low) / 3.92.
 * @param [equation] {@phrase equation}
 * @param [curveSd] {@phrase curveSd}
 * @returns A chance between 0 and 1; format the cell as a percentage.
 * @errors #VALUE! for fewer than 1 rep, or reps past the equation's reach (15 for brzycki and lander, 30 for the others).
 * @example =SPARE.SETCHANCE(95, 7, 120)
 * @example =SPARE.SETCHANCE(B2:B20, C2:C20, F1, F2)
 * @source By arithmetic: a normal ln 1RM and a normal ln curve factor, integrated; the usual spreads were chosen on simulated logs: docs/accuracy.md.
 */
export function setChance(
  load: unknown[][],
  reps: unknown[][],
  oneRepMax: unknown[][],
  maxSd?: unknown[][],
  equation?: EquationChoice[][],
  curveSd?: unknown[][],
): unknown[][] {
  return lift(
    {
      load: required(load, quantities.load()),
      reps: required(reps, quantities.reps()),
      oneRepMax: required(oneRepMax, quantities.load("oneRepMax")),
      maxSd: setting(maxSd, quantities.maxSd(), 0.03),
      equation: equationOf(equation),
      curveSd: setting(curveSd, quantities.curveSd(), undefined),
    },
    ({ load, reps, oneRepMax, ...options }) => chance(load, reps, oneRepMax, options),
  );
}
