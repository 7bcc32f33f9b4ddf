import {
  choice,
  invalid,
  isGiven,
  readList,
  readOne,
  recorded,
  required,
  setting,
  single,
  table,
  type Grid,
} from "../cells";
import { LOWEST_RPE, reserveToRpe, rpeToReserve } from "../core/load/effortScale";
import { roundToMultiple } from "../core/load/round";
import { nextLoad as loadForNextSet, targetLoad } from "../core/load/targetLoad";
import { fractionAt, type Equation } from "../core/strength/equations";
import { lift } from "./answer";
import { DirectionChoice, ScaleChoice, type EquationChoice } from "./choices";
import { equationOf } from "./equation";
import * as quantities from "./quantities";

/**
 * The load for a target: so many reps with so many left in reserve, from the one-repetition maximum, rounded to what the bar can carry (nearest, a tie down).
 *
 * @customfunction LOADFOR
 * @param oneRepMax The 1RM or e1RM, above 0, in kilograms or pounds.
 * @param reps Target reps, above 0.
 * @param [reserve] Target reps in reserve, 0 or more; 0 if omitted, no load yet if blank.
 * @param [increment] The smallest step of the load, such as 2.5; 0 or omitted for no rounding.
 * @param [equation] A published equation, "epley" if omitted, or the athlete's own curve constant.
 * @returns The load, in the unit of the 1RM.
 * @errors #VALUE! when reps plus reserve is below 1 or past the equation's reach.
 * @example =SPARE.LOADFOR(140, 5, 2, 2.5)
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213.
 */
export function loadFor(
  oneRepMax: unknown[][],
  reps: unknown[][],
  reserve?: unknown[][],
  increment?: unknown[][],
  equation?: EquationChoice[][],
): unknown[][] {
  return lift(
    {
      oneRepMax: required(oneRepMax, quantities.load("oneRepMax")),
      reps: required(reps, quantities.reps()),
      reserve: recorded(reserve, quantities.reserve(), 0),
      increment: setting(increment, quantities.increment(), 0),
      equation: equationOf(equation),
    },
    ({ oneRepMax, reps, reserve, increment, equation }) =>
      targetLoad(oneRepMax, reps + reserve, increment, equation),
  );
}

/**
 * The load that brings the next set to its target, from the set just done: too easy and it goes up, too hard and it goes down.
 *
 * @customfunction NEXTLOAD
 * @param load The load of the set just done, above 0.
 * @param reps The reps just done, above 0.
 * @param reserve The reps in reserve just called, 0 or more; blank means not recorded.
 * @param targetReps Reps of the next set, above 0.
 * @param targetReserve Reps to leave in reserve in the next set, 0 or more.
 * @param [increment] The smallest step of the load, such as 2.5; 0 or omitted for no rounding.
 * @param [equation] A published equation, "epley" if omitted, or the athlete's own curve constant.
 * @returns The load of the next set, rounded to the increment (nearest, a tie down).
 * @errors #VALUE! when reps plus reserve of either set is below 1 or past the equation's reach.
 * @example =SPARE.NEXTLOAD(100, 8, 2, 5, 1, 2.5)
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213.
 */
export function nextLoad(
  load: unknown[][],
  reps: unknown[][],
  reserve: unknown[][],
  targetReps: unknown[][],
  targetReserve: unknown[][],
  increment?: unknown[][],
  equation?: EquationChoice[][],
): unknown[][] {
  return lift(
    {
      load: required(load, quantities.load()),
      reps: required(reps, quantities.reps()),
      reserve: required(reserve, quantities.reserve()),
      targetReps: required(targetReps, quantities.reps("targetReps")),
      targetReserve: required(targetReserve, quantities.reserve("targetReserve")),
      increment: setting(increment, quantities.increment(), 0),
      equation: equationOf(equation),
    },
    ({ load, reps, reserve, targetReps, targetReserve, increment, equation }) =>
      loadForNextSet(
        { load, repsToFailure: reps + reserve },
        targetReps + targetReserve,
        increment,
        equation,
      ),
  );
}

/**
 * Rounds a load to a multiple of the smallest step: to the nearest (a tie goes down), down or up.
 *
 * @customfunction ROUNDLOAD
 * @param load The load, above 0.
 * @param increment The smallest step of the load, such as 2.5; 0 for no rounding.
 * @param [direction] "nearest" if omitted, "down" or "up".
 * @returns The rounded load.
 * @errors #VALUE! for an increment below 0.
 * @example =SPARE.ROUNDLOAD(98.6, 2.5)
 * @source Common practice, no source: a tie goes down, to the cautious side.
 */
export function roundLoad(
  load: unknown[][],
  increment: unknown[][],
  direction?: DirectionChoice[][],
): unknown[][] {
  return lift(
    {
      load: required(load, quantities.load()),
      increment: setting(increment, quantities.increment(), 0),
      direction: choice(direction, "direction", DirectionChoice, DirectionChoice.nearest),
    },
    ({ load, increment, direction }) =>
      roundToMultiple(
        load,
        increment,
        direction === DirectionChoice.nearest ? "nearest-tie-down" : direction,
      ),
  );
}

/**
 * A chart of loads: reps down, reps in reserve across, from one lifter's one-repetition maximum.
 *
 * @customfunction LOADCHART
 * @param oneRepMax The 1RM or e1RM, above 0, in kilograms or pounds; one value.
 * @param [reps] The reps to list, a row or a column; 1 to 12 if omitted.
 * @param [reserves] The reserves to list, a row or a column; 0 to 4 if omitted.
 * @param [increment] The smallest step of the load, such as 2.5; 0 or omitted for no rounding.
 * @param [equation] A published equation, "epley" if omitted, or the athlete's own curve constant.
 * @param [scale] "reserve" if omitted, or "rpe" for headings of 10 − reserve.
 * @returns A grid with its headings; "" where reps plus reserve is past the equation's reach.
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

/**
 * A chart of percentages: reps down, reps in reserve across, as fractions of the one-repetition maximum.
 *
 * @customfunction PERCENTCHART
 * @param [reps] The reps to list, a row or a column; 1 to 12 if omitted.
 * @param [reserves] The reserves to list, a row or a column; 0 to 4 if omitted.
 * @param [equation] A published equation, "epley" if omitted, or the athlete's own curve constant.
 * @param [scale] "reserve" if omitted, or "rpe" for headings of 10 − reserve.
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

/**
 * Reps in reserve from a rating of perceived exertion (RPE) on the repetitions-in-reserve scale: 10 − RPE.
 *
 * @customfunction RPETORIR
 * @param rpe The RPE, 5 to 10; below 5 the scale names no number of reps.
 * @returns Reps in reserve, 0 to 5.
 * @errors #VALUE! for an RPE outside 5 to 10.
 * @example =SPARE.RPETORIR(8.5)
 * @source Zourdos et al. 2016, J Strength Cond Res 30:267-275; a line through the printed scale, which has "none left, perhaps more load" at 9.5.
 */
export function rpeToRir(rpe: unknown[][]): unknown[][] {
  const scale = {
    ...quantities.above0("rpe", "an RPE of 5 to 10"),
    accepts: (value: number) => value >= LOWEST_RPE && value <= reserveToRpe(0),
  };
  return lift({ rpe: required(rpe, scale) }, ({ rpe }) => rpeToReserve(rpe));
}

/**
 * Rating of perceived exertion (RPE) from reps in reserve, on the repetitions-in-reserve scale: 10 − reserve.
 *
 * @customfunction RIRTORPE
 * @param reserve Reps in reserve, 0 to 5. For a range write D2:D50&"" so that a blank is not read as 0.
 * @returns An RPE, 5 to 10.
 * @errors #VALUE! for a reserve outside 0 to 5.
 * @example =SPARE.RIRTORPE(2)
 * @source Zourdos et al. 2016, J Strength Cond Res 30:267-275.
 */
export function rirToRpe(reserve: unknown[][]): unknown[][] {
  const scale = {
    ...quantities.reserve(),
    expected: "reps in reserve, 0 to 5",
    accepts: (value: number) => value >= 0 && value <= rpeToReserve(LOWEST_RPE),
  };
  return lift({ reserve: required(reserve, scale) }, ({ reserve }) => reserveToRpe(reserve));
}

const USUAL_REPS = Array.from({ length: 12 }, (_rep, index) => index + 1);
const USUAL_RESERVES = [0, 1, 2, 3, 4];

/** Reps down, reserves across, and in each cell what `cell` makes of their sum; "" past the equation's cap. */
function chart(
  reps: unknown,
  reserves: unknown,
  equation: unknown,
  scale: unknown,
  cell: (repsToFailure: number, equation: Equation) => number,
): Grid {
  const down = listOr(reps, quantities.reps(), USUAL_REPS);
  const across = listOr(reserves, quantities.reserve("reserves"), USUAL_RESERVES);
  const curve = readOne(equationOf(equation))!;
  const headings = readOne(choice(scale, "scale", ScaleChoice, ScaleChoice.reserve));
  return table(
    [
      "",
      ...across.map((reserve) => (headings === ScaleChoice.rpe ? reserveToRpe(reserve) : reserve)),
    ],
    down.map((reps) => [
      reps,
      ...across.map((reserve) => {
        const t = reps + reserve;
        return t > curve.cap ? "" : cell(t, curve);
      }),
    ]),
  );
}

function listOr(
  given: unknown,
  quantity: ReturnType<typeof quantities.reps>,
  usual: readonly number[],
): readonly number[] {
  if (!isGiven(given)) return usual;
  const list = readList(given, quantity);
  if (list.length === 0) throw invalid(`${quantity.name} is blank; expected ${quantity.expected}`);
  return list;
}
