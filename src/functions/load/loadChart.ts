import { readOne, required, setting, single } from "../../cells";
import { targetLoad } from "../../core/load/targetLoad";
import type { ScaleChoice } from "../choices";
import { type EquationChoice } from "../choices";
import * as quantities from "../quantities";
import { chart } from "./chart";

/**
 * A chart of loads: reps down, reps in reserve across, from one lifter's one-repetition maximum.
 *
 * @customfunction LOADCHART
 * @param oneRepMax The 1RM or e1RM, above 0, in kilograms or pounds; one value.
 * @param [reps] {@phrase repsListed}
 * @param [reserves] {@phrase reservesListed}
 * @param [increment] {@phrase increment}
 * @param [equation] {@phrase equation}
 * @param [scale] {@phrase scaleListed}
 * @returns A grid with its headings, no load rounded above the 1RM; "" where reps plus reserve is past the equation's reach.
 * @errors #VALUE! when reps plus reserve is below 1.
 * @example =SPARE.LOADCHART(140, , , 2.5)
 * @source Equations as compared by LeSuer et al. 1997; the RPE headings, Zourdos et al. 2016, J Strength Cond Res 30:267-275.
 */
export function loadChart(
  oneRepMax: unknown[][],
  reps?: unknown[][],
  reserves?: unknown[][],
  increment?: unknown[][],
  equation?: EquationChoice[][],
  scale?: ScaleChoice[][],
): unknown[][] {
  const maximum = readOne(required(oneRepMax, quantities.load("oneRepMax")));
  const step = readOne(setting(increment, quantities.increment(), 0)) ?? 0;
  if (maximum === null) return single("");
  return chart(reps, reserves, equation, scale, (t, curve) => targetLoad(maximum, t, step, curve));
}
