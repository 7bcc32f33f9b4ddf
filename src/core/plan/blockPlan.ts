import { expectAtLeast, expectPositive, expectWhole, inRow } from "../checks";
import { last } from "../last";
import { roundToMultiple } from "../load/round";
import { roundedLoad } from "../load/targetLoad";
import { BadInput } from "../problem";
import { fractionAt, type Equation } from "../strength/equations";
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
 */
export function blockPlan(
  oneRepMax: number | readonly number[],
  blocks: readonly Block[],
  options: PlanOptions,
): PlanRow[] {
  const maxima = typeof oneRepMax === "number" ? [oneRepMax] : oneRepMax;
  if (maxima.length !== 1 && maxima.length !== blocks.length) {
    throw new BadInput(
      `there are ${maxima.length} one-rep maxima and ${blocks.length} blocks; ` +
        "expected one for all blocks, or one a block",
    );
  }
  return startsOf(blocks).flatMap((start, place) => {
    const maximum = maxima.length === 1 ? maxima[0]! : maxima[place]!;
    return Array.from({ length: blocks[place]!.weeks }, (_, i) =>
      weekOfBlock(maximum, blocks, place, start, i + 1, options),
    );
  });
}

/** One week of the plan: what `blockPlan` has on that row, without working out the others. */
export function planWeek(
  oneRepMax: number,
  blocks: readonly Block[],
  week: number,
  options: PlanOptions,
): PlanRow {
  const starts = startsOf(blocks);
  const total = last(starts) + last(blocks).weeks;
  if (week > total)
    throw new BadInput(`week is ${week}; expected a week of the plan, 1 to ${total}`);
  expectWhole("week", week, 1, total);
  const place = starts.findIndex((start, i) => week <= start + blocks[i]!.weeks);
  const start = starts[place]!;
  return weekOfBlock(oneRepMax, blocks, place, start, week - start, options);
}

/** The weeks before each block. */
function startsOf(blocks: readonly Block[]): number[] {
  if (blocks.length === 0) throw new BadInput("there are no blocks; expected a row a block");
  const starts: number[] = [];
  let total = 0;
  blocks.forEach((block, place) => {
    inRow(rowOf(block, place), () => expectWhole("weeks", block.weeks, 1, MOST_WEEKS - total));
    starts.push(total);
    total += block.weeks;
  });
  return starts;
}

function weekOfBlock(
  oneRepMax: number,
  blocks: readonly Block[],
  place: number,
  start: number,
  weekInBlock: number,
  { equation, increment = 0 }: PlanOptions,
): PlanRow {
  const block = blocks[place]!;
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
