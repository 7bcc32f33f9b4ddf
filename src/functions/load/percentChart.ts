import { fractionAt } from "../../core/strength/equations";
import type { ScaleChoice } from "../choices";
import { type EquationChoice } from "../choices";
import { chart } from "./chart";

/**
 * A chart of percentages: reps down, reps in reserve across, as fractions of the one-repetition maximum.
 *
 * @customfunction PERCENTCHART
 * @param [reps] {@phrase repsListed}
 * @param [reserves] {@phrase reservesListed}
 * @param [equation] {@phrase equation}
 * @param [scale] {@phrase scaleListed}
 * @returns A grid with its headings; "" where reps plus reserve is past the equation's reach.
 * @errors #VALUE! when reps plus reserve is below 1.
 * @example =SPARE.PERCENTCHART()
 * @source Equations as compared by LeSuer et al. 1997; the RPE headings, Zourdos et al. 2016, J Strength Cond Res 30:267-275.
 */
export function percentChart(
  reps?: unknown[][],
  reserves?: unknown[][],
  equation?: EquationChoice[][],
  scale?: ScaleChoice[][],
): unknown[][] {
  return chart(reps, reserves, equation, scale, (t, curve) => fractionAt(curve, t));
}
