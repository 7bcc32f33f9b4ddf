import { expectAtLeast, expectPositive, expectWhole, inRow } from "../checks";
import { last } from "../last";
import { roundToMultiple } from "../load/round";
import { roundedLoad } from "../load/targetLoad";
import { BadInput } from "../problem";
import { fractionAt, type Equation } from "../strength/equations";
import { zip } from "../zip";
import { MOST_WEEKS, onTheWay, reserveInWeek } from "./taper";

/** A block of training weeks: a row of the block table. An easy week is just another block. */
export interface Block {
  /** Its place among the blocks unless given. */
  readonly name?: string | number;
  readonly weeks: number;
  readonly setsFirst: number;
  readonly setsLast: number;
  readonly repsLow: number;
  readonly repsHigh: number;
  readonly reserveFirst: number;
  readonly reserveLast: number;
  /** The row of the block table it stands on, for messages; its place among the blocks unless given. */
  readonly row?: number;
}

/** What can be said of a plan besides its blocks. */
export interface PlanOptions {
  readonly equation: Equation;
  /** Loads go in steps of this; 0 or not given for no rounding. */
  readonly increment?: number;
}

/** A week of the plan. */
export interface PlanRow {
  readonly block: string | number;
  /** Counted on through the blocks. */
  readonly week: number;
  readonly sets: number;
  readonly repsLow: number;
  readonly repsHigh: number;
  readonly reserve: number;
  /** The fraction of 1RM, before the load is rounded. */
  readonly percent: number;
  readonly load: number;
  /** Sets × middle reps × load. */
  readonly volumeLoad: number;
}

/**
 * A plan of several blocks, a row a week. Sets and reserve go straight from the first week of a block to
 * its last, in whole sets (a tie down) and whole reps (a tie up); a block of one week takes its last values.
 * The load is the one for the middle of the rep range at that week's reserve.
 *
 * `oneRepMax` is one for all blocks, or one a block.
 *
 * Source: common practice, no source.
 *
 * @param oneRepMax - The maximum: one for all blocks, or one a block.
 * @param blocks - The blocks in their order.
 * @param options - The increment and the equation.
 * @returns A row a week, loads in the maximum's unit.
 * @throws BadInput where a block cannot be, naming it.
 */
export function blockPlan(
  oneRepMax: number | readonly number[],
  blocks: readonly Block[],
  options: PlanOptions,
): PlanRow[] {
  const maxima = typeof oneRepMax === "number" ? [oneRepMax] : oneRepMax;
  const [first, ...others] = maxima;
  const isForAll = first !== undefined && others.length === 0;
  const perBlock = isForAll ? blocks.map(() => first) : maxima;
  if (perBlock.length !== blocks.length) {
    throw new BadInput(
      `there are ${maxima.length} one-rep maxima and ${blocks.length} blocks; ` +
        "expected one for all blocks, or one a block",
    );
  }
  return zip(perBlock, placed(blocks)).flatMap(([maximum, one]) =>
    Array.from({ length: one.block.weeks }, (_, i) => weekOfBlock(maximum, one, i + 1, options)),
  );
}

/**
 * One week of the plan: what `blockPlan` has on that row, without working out the others.
 *
 * Source: common practice, no source.
 *
 * @param oneRepMax - The maximum: one for all blocks, or one a block.
 * @param blocks - The blocks in their order.
 * @param week - The week, counted through the blocks from 1.
 * @param options - The increment and the equation.
 * @returns The row of that week.
 * @throws BadInput where a block cannot be, or there is no such week.
 */
export function planWeek(
  oneRepMax: number,
  blocks: readonly Block[],
  week: number,
  options: PlanOptions,
): PlanRow {
  const all = placed(blocks);
  const end = last(all);
  const total = end.start + end.block.weeks;
  if (week > total)
    throw new BadInput(`week is ${week}; expected a week of the plan, 1 to ${total}`);
  expectWhole("week", week, 1, total);
  const one = all.find(({ start, block }) => week <= start + block.weeks) ?? end;
  return weekOfBlock(oneRepMax, one, week - one.start, options);
}

/** A block, its place in the plan, and how many weeks come before it. */
interface PlacedBlock {
  readonly block: Block;
  readonly place: number;
  readonly start: number;
}

function placed(blocks: readonly Block[]): PlacedBlock[] {
  if (blocks.length === 0) throw new BadInput("there are no blocks; expected a row a block");
  let total = 0;
  return blocks.map((block, place) => {
    inRow(rowOf(block, place), () => {
      expectWhole("weeks", block.weeks, 1, MOST_WEEKS);
      if (total + block.weeks <= MOST_WEEKS) return;
      throw new BadInput(
        `weeks is ${block.weeks}, after ${total} weeks of the blocks before; ` +
          `expected at most ${MOST_WEEKS} in all`,
      );
    });
    const start = total;
    total += block.weeks;
    return { block, place, start };
  });
}

function weekOfBlock(
  oneRepMax: number,
  { block, place, start }: PlacedBlock,
  weekInBlock: number,
  { equation, increment = 0 }: PlanOptions,
): PlanRow {
  const { name = place + 1, weeks, repsLow, repsHigh } = block;
  expectPositive("the one-rep max", oneRepMax);
  expectAtLeast("increment", increment, 0);
  const middle = (repsLow + repsHigh) / 2;
  const { sets, reserve, percent } = inRow(rowOf(block, place), () => {
    checkBlock(block);
    const straight = onTheWay(block.setsFirst, block.setsLast, weekInBlock, weeks);
    const taper = { weeks, from: block.reserveFirst, to: block.reserveLast };
    const reserve = reserveInWeek(taper, weekInBlock);
    const percent = fractionAt(equation, middle + reserve);
    return { sets: roundToMultiple(straight, 1, "nearest-tie-down"), reserve, percent };
  });
  const load = roundedLoad(oneRepMax * percent, oneRepMax, increment);
  return {
    block: name,
    week: start + weekInBlock,
    sets,
    repsLow,
    repsHigh,
    reserve,
    percent,
    load,
    volumeLoad: sets * middle * load,
  };
}

function checkBlock({ setsFirst, setsLast, repsLow, repsHigh }: Block): void {
  expectAtLeast("sets first", setsFirst, 1);
  expectAtLeast("sets last", setsLast, 1);
  expectAtLeast("reps low", repsLow, 1);
  if (!(repsHigh >= repsLow)) {
    throw new BadInput(`reps high is ${repsHigh}; expected at least reps low, ${repsLow}`);
  }
}

const rowOf = (block: Block, place: number) => `row ${block.row ?? place + 1} of the blocks`;
