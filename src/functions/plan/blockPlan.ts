import { readList, readOne, setting, single, table } from "../../cells";
import { blockPlan as plan } from "../../core/plan/blockPlan";
import type { EquationChoice } from "../choices";
import { equationOf } from "../equation";
import * as quantities from "../quantities";
import { typed, type Given } from "../typed";
import { PlanPart } from "./planPart";
import { readBlocks } from "./readBlocks";

/**
 * A training plan as a table, a row a week, from a short table of blocks: reserve comes down and sets go up week by week, and the load follows. An easy week is just another block.
 *
 * @customfunction BLOCKPLAN
 * @param oneRepMax The 1RM or e1RM, above 0: one for all blocks, or one a block.
 * @param blocks {@phrase blocks}
 * @param [increment] {@phrase increment}
 * @param [equation] {@phrase equation}
 * @returns A table with headings: block, week, sets, reps low, reps high, reserve, percent (a fraction), load, volume load.
 * @errors #VALUE! naming the row of the blocks that cannot be right.
 * @example =SPARE.BLOCKPLAN(100, {"Block A",2,3,3,8,10,2,1;"Block B",1,2,2,3,3,1,0}, 2.5)
 * @source Common practice, no source: straight lines, reserve in whole reps (a tie up), sets whole (a tie down); loads by the equation.
 */
export function blockPlan(
  oneRepMax: unknown[][],
  blocks: unknown[][],
  increment?: unknown[][],
  equation?: EquationChoice[][],
): unknown[][] {
  const weeks = computeBlockPlan({ oneRepMax, blocks, increment, equation });
  if (weeks === undefined) return single("");
  const keys = Object.keys(PlanPart) as (keyof typeof PlanPart)[];
  return table(
    Object.values(PlanPart),
    weeks.map((week) => keys.map((key) => week[key])),
  );
}

/** The typed half of BLOCKPLAN: its weeks; nothing while the 1RM or the blocks are not filled in. */
export const computeBlockPlan = typed(
  (cells: Given<"oneRepMax" | "blocks", "increment" | "equation">) => {
    const maxima = readList(cells.oneRepMax, quantities.load("oneRepMax"));
    const blocks = readBlocks(cells.blocks);
    const options = {
      increment: readOne(setting(cells.increment, quantities.increment(), 0))!,
      equation: readOne(equationOf(cells.equation))!,
    };
    return maxima.length === 0 || blocks.length === 0 ? undefined : plan(maxima, blocks, options);
  },
);
