import { readList, readOne, setting, single, table } from "../../cells";
import { blockPlan as plan } from "../../core/plan/blockPlan";
import type { EquationChoice } from "../choices";
import { equationOf } from "../equation";
import * as quantities from "../quantities";
import { PlanColumn } from "./planColumn";
import { readBlocks } from "./readBlocks";

/**
 * A training plan as a table, a row a week, from a short table of blocks: reserve comes down and sets go up week by week, and the load follows. An easy week is just another block.
 *
 * @customfunction BLOCKPLAN
 * @param oneRepMax The 1RM or e1RM, above 0: one for all blocks, or one a block.
 * @param blocks A row a block: [name], weeks, sets first, sets last, reps low, reps high, reserve first, reserve last.
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
  const maxima = readList(oneRepMax, quantities.load("oneRepMax"));
  const blockList = readBlocks(blocks);
  const options = {
    increment: readOne(setting(increment, quantities.increment(), 0))!,
    equation: readOne(equationOf(equation))!,
  };
  if (maxima.length === 0 || blockList.length === 0) return single("");
  const keys = Object.keys(PlanColumn) as (keyof typeof PlanColumn)[];
  return table(
    Object.values(PlanColumn),
    plan(maxima, blockList, options).map((week) => keys.map((key) => week[key])),
  );
}
