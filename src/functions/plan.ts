import {
  choice,
  isGiven,
  listItem,
  optional,
  readList,
  readOne,
  readTable,
  required,
  requiredIn,
  setting,
  single,
  table,
} from "../cells";
import { blockPlan as plan, planWeek as weekOfPlan, type Block } from "../core/plan/blockPlan";
import { planCheck as check } from "../core/plan/planCheck";
import { reserveInWeek, reserveTaper as taper } from "../core/plan/taper";
import { lift, liftRow } from "./answer";
import type { EquationChoice } from "./choices";
import { equationOf } from "./equation";
import * as quantities from "./quantities";

/**
 * Reps in reserve week by week, straight from the first week to the last: sets get closer to failure as the block goes on.
 *
 * @customfunction RESERVETAPER
 * @param weeks How many weeks the block has, a whole number from 1.
 * @param from Reserve in week 1, 0 or more.
 * @param to Reserve in the last week, 0 or more.
 * @param [week] One week, or a range of weeks, for those weeks alone; for blocks that repeat write MOD(week − 1, weeks) + 1.
 * @param [step] What the reserve is rounded to, a tie up; whole reps if omitted, 0 for no rounding.
 * @returns A column, a week a row; where week is given, the reserve of that week in the shape of the range. One week gives the last reserve.
 * @errors #VALUE! for a week past the last.
 * @example =SPARE.RESERVETAPER(4, 3, 0)
 * @example =SPARE.RESERVETAPER(5, 4, 1, A2:A6)
 * @source Common practice, no source: a straight line, rounded to the cautious side.
 */
export function reserveTaper(
  weeks: unknown[][],
  from: unknown[][],
  to: unknown[][],
  week?: unknown[][],
  step?: unknown[][],
): unknown[][] {
  const inputs = {
    weeks: required(weeks, quantities.weeks()),
    from: required(from, quantities.reserve("from")),
    to: required(to, quantities.reserve("to")),
    step: setting(step, quantities.atLeast0("step", "a step of 0 or more"), 1),
  };
  if (isGiven(week)) {
    const oneWeek = quantities.whole("week", "a whole number of a week, from 1", Infinity);
    return lift({ ...inputs, week: listItem(week, oneWeek) }, ({ week, ...block }) =>
      reserveInWeek(block, week),
    );
  }
  const block = {
    weeks: readOne(inputs.weeks),
    from: readOne(inputs.from),
    to: readOne(inputs.to),
  };
  const { weeks: length, from: first, to: last } = block;
  if (length === null || first === null || last === null) return single("");
  return taper({ weeks: length, from: first, to: last, step: readOne(inputs.step)! }).map(
    (reserve) => [reserve],
  );
}

/**
 * @customenum {string}
 */
export enum PlanColumn {
  /** The block's name, or its number. */
  block = "block",
  /** The week, counted on through the blocks. */
  week = "week",
  /** Sets that week. */
  sets = "sets",
  /** Lower end of the rep range. */
  repsLow = "reps low",
  /** Upper end of the rep range. */
  repsHigh = "reps high",
  /** Reps in reserve that week. */
  reserve = "reserve",
  /** Fraction of 1RM, before the load is rounded. */
  percent = "percent",
  /** The load for the middle of the rep range at that reserve. */
  load = "load",
  /** Sets × middle reps × load. */
  volumeLoad = "volume load",
}

/**
 * A training plan as a table, a row a week, from a short table of blocks: reserve comes down and sets go up week by week, and the load follows. A deload is just another block.
 *
 * @customfunction BLOCKPLAN
 * @param oneRepMax The 1RM or e1RM, above 0: one for all blocks, or one a block.
 * @param blocks A row a block: [name], weeks, sets first, sets last, reps low, reps high, reserve first, reserve last.
 * @param [increment] The smallest step of the load, such as 2.5; 0 or omitted for no rounding.
 * @param [equation] A published equation, "epley" if omitted, or the athlete's own curve constant.
 * @returns A table with headings: block, week, sets, reps low, reps high, reserve, percent (a fraction), load, volume load.
 * @errors #VALUE! naming the row of the blocks that cannot be right.
 * @example =SPARE.BLOCKPLAN(100, {"Base",2,3,3,8,10,2,1;"Peak",1,2,2,3,3,1,0}, 2.5)
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

/**
 * One number of a block plan for one week, to fill a layout that already exists: lifters down, weeks across, one formula.
 *
 * @customfunction PLANWEEK
 * @param oneRepMax The 1RM or e1RM, above 0; one, or a column of lifters.
 * @param blocks A row a block: [name], weeks, sets first, sets last, reps low, reps high, reserve first, reserve last.
 * @param week The week, counted on through the blocks from 1; one, or a row of weeks.
 * @param column What to give: "load", "sets", "reserve", "reps low", "reps high", "percent", "volume load", "block" or "week".
 * @param [increment] The smallest step of the load, such as 2.5; 0 or omitted for no rounding.
 * @param [equation] A published equation, "epley" if omitted, or the athlete's own curve constant.
 * @returns One value, in the shape that lifters and weeks make together.
 * @errors #VALUE! for a week past the plan, or a row of the blocks that cannot be right.
 * @example =SPARE.PLANWEEK({120;140}, {5,3,4,7,9,4,1;5,4,4,4,6,4,1}, {1,5,6,10}, "load", 2.5)
 * @source As BLOCKPLAN.
 */
export function planWeek(
  oneRepMax: unknown[][],
  blocks: unknown[][],
  week: unknown[][],
  column: PlanColumn[][],
  increment?: unknown[][],
  equation?: EquationChoice[][],
): unknown[][] {
  const blockList = readBlocks(blocks);
  const keyOf = new Map(Object.entries(PlanColumn).map(([key, word]) => [word, key]));
  return lift(
    {
      oneRepMax: required(oneRepMax, quantities.load("oneRepMax")),
      week: listItem(week, quantities.whole("week", "a whole number of a week, from 1", Infinity)),
      column: choice(column, "column", PlanColumn, PlanColumn.load),
      increment: setting(increment, quantities.increment(), 0),
      equation: equationOf(equation),
    },
    ({ oneRepMax, week, column, increment, equation }) => {
      if (blockList.length === 0) return "";
      const planned = weekOfPlan(oneRepMax, blockList, week, { increment, equation });
      return planned[keyOf.get(column) as keyof typeof PlanColumn];
    },
  );
}

/**
 * @customenum {string}
 */
export enum PlanCheckPart {
  /** Load done over load planned, less 1. */
  loadOff = "load off",
  /** Reps done less reps planned. */
  repsOff = "reps off",
  /** Reserve left less reserve planned. */
  reserveOff = "reserve off",
  /** The e1RM of the set done over the one the plan assumed, less 1. */
  strengthOff = "strength off",
}

/**
 * What was done against what was planned. More load is not more strength if the reserve went with it: strength off weighs load, reps and reserve together.
 *
 * @customfunction PLANCHECK
 * @param plannedLoad The planned load, above 0.
 * @param plannedReps The planned reps, above 0.
 * @param plannedReserve The planned reps in reserve, 0 or more.
 * @param load The load done, above 0, in the same unit.
 * @param reps The reps done, above 0.
 * @param reserve The reps in reserve called, 0 or more; blank for not recorded. For a range write D2:D50&"".
 * @param [equation] A published equation, "epley" if omitted, or the athlete's own curve constant.
 * @param [part] One label, such as "strength off", for that one value in one cell.
 * @returns A row: load off (a fraction), reps off, reserve off, strength off (a fraction). Without a reserve the last two are "".
 * @errors #VALUE! when reps plus reserve of either set is below 1 or past the equation's reach.
 * @example =SPARE.PLANCHECK(100, 5, 2, 102.5, 5, 1)
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213; the comparison by arithmetic.
 */
export function planCheck(
  plannedLoad: unknown[][],
  plannedReps: unknown[][],
  plannedReserve: unknown[][],
  load: unknown[][],
  reps: unknown[][],
  reserve: unknown[][],
  equation?: EquationChoice[][],
  part?: PlanCheckPart[][],
): unknown[][] {
  return liftRow(
    {
      plannedLoad: required(plannedLoad, quantities.load("plannedLoad")),
      plannedReps: required(plannedReps, quantities.reps("plannedReps")),
      plannedReserve: optional(plannedReserve, quantities.reserve("plannedReserve")),
      load: required(load, quantities.load()),
      reps: required(reps, quantities.reps()),
      reserve: optional(reserve, quantities.reserve()),
      equation: equationOf(equation),
    },
    PlanCheckPart,
    part,
    ({ plannedLoad, plannedReps, plannedReserve, load, reps, reserve, equation }) =>
      check(
        { load: plannedLoad, reps: plannedReps, reserve: plannedReserve },
        { load, reps, reserve },
        equation,
      ),
  );
}

const BLOCK_COLUMNS = {
  weeks: quantities.weeks(),
  setsFirst: quantities.sets("sets first"),
  setsLast: quantities.sets("sets last"),
  repsLow: quantities.reps("reps low"),
  repsHigh: quantities.reps("reps high"),
  reserveFirst: quantities.reserve("reserve first"),
  reserveLast: quantities.reserve("reserve last"),
};

/** The blocks of a plan, a row a block, with a name before the numbers if it likes. */
function readBlocks(given: unknown): Block[] {
  const columns = Object.entries(BLOCK_COLUMNS);
  const rows = readTable(given, {
    name: "blocks",
    columns: columns.map(([, quantity]) => quantity),
    canHaveLabels: true,
  });
  return rows.map((row) => {
    const numbers = Object.fromEntries(
      columns.map(([key, quantity], column) => [key, requiredIn(row, column, quantity)]),
    ) as Record<keyof typeof BLOCK_COLUMNS, number>;
    return { ...numbers, row: row.row, ...(row.label === undefined ? {} : { name: row.label }) };
  });
}
