import { choice, listItem, required, setting } from "../../cells";
import { planWeek as weekOfPlan } from "../../core/plan/blockPlan";
import { lift } from "../answer";
import type { EquationChoice } from "../choices";
import { equationOf } from "../equation";
import * as quantities from "../quantities";
import { PlanPart } from "./planPart";
import { readBlocks } from "./readBlocks";

/**
 * One number of a block plan for one week, to fill a layout that already exists: lifters down, weeks across, one formula.
 *
 * @customfunction PLANWEEK
 * @param oneRepMax The 1RM or e1RM, above 0; one, or a column of lifters.
 * @param blocks {@phrase blocks}
 * @param week The week, counted on through the blocks from 1; one, or a row of weeks.
 * @param part What to give: "load", "sets", "reserve", "reps low", "reps high", "percent", "volume load", "block" or "week".
 * @param [increment] {@phrase increment}
 * @param [equation] {@phrase equation}
 * @returns One value, in the shape that lifters and weeks make together.
 * @errors #VALUE! for a week past the plan, or a row of the blocks that cannot be right.
 * @example =SPARE.PLANWEEK({120;140}, {5,3,4,7,9,4,1;5,4,4,4,6,4,1}, {1,5,6,10}, "load", 2.5)
 * @source As BLOCKPLAN.
 */
export function planWeek(
  oneRepMax: unknown[][],
  blocks: unknown[][],
  week: unknown[][],
  part: PlanPart[][],
  increment?: unknown[][],
  equation?: EquationChoice[][],
): unknown[][] {
  const blockList = readBlocks(blocks);
  const keyOf = new Map(Object.entries(PlanPart).map(([key, word]) => [word, key]));
  return lift(
    {
      oneRepMax: required(oneRepMax, quantities.load("oneRepMax")),
      week: listItem(week, quantities.whole("week", "a whole number of a week, from 1", Infinity)),
      part: choice(part, "part", PlanPart, PlanPart.load),
      increment: setting(increment, quantities.increment(), 0),
      equation: equationOf(equation),
    },
    ({ oneRepMax, week, part, increment, equation }) => {
      if (blockList.length === 0) return "";
      const planned = weekOfPlan(oneRepMax, blockList, week, { increment, equation });
      return planned[keyOf.get(part) as keyof typeof PlanPart];
    },
  );
}
