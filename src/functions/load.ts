import {
  choice,
  invalid,
  isGiven,
  isSingle,
  matchWord,
  numberInText,
  namesParts,
  quoted,
  readCell,
  readList,
  readOne,
  readTable,
  recorded,
  required,
  requiredIn,
  setting,
  single,
  table,
  toRange,
  type Grid,
} from "../cells";
import { barLoader, plateSets, type BarLoader, type Plate } from "../core/load/plates";
import { LOWEST_RPE, reserveToRpe, rpeToReserve } from "../core/load/effortScale";
import { roundToMultiple } from "../core/load/round";
import { nextLoad as loadForNextSet, targetLoad } from "../core/load/targetLoad";
import { warmUpSets as warmUp, type WarmUpStep } from "../core/load/warmUp";
import { fractionAt, type Equation } from "../core/strength/equations";
import { lift, liftReport } from "./answer";
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

/**
 * @customenum {string}
 */
export enum NearestChoice {
  /** Only the load itself; #N/A with the nearest loads if the plates do not make it. */
  exact = "exact",
  /** The plates of the nearest load below. */
  below = "below",
  /** The plates of the nearest load above. */
  above = "above",
}

/**
 * The plates for one side of the bar, largest first and as few as can be: "20 + 5 + 1.25". An empty bar is "bar only".
 *
 * @customfunction PLATES
 * @param load The load, bar included, above 0.
 * @param [bar] The bar's weight; 20 if omitted, 45 with the "lb" plates.
 * @param [plates] "kg" if omitted (25, 20, 15, 10, 5, 2.5, 1.25), "lb" (45, 35, 25, 10, 5, 2.5), or your own: a column of plates, and beside it how many pairs there are (blank for no limit).
 * @param [nearest] "exact" if omitted, or "below" or "above" for the nearest load that can be made.
 * @returns Text: the plates on each side, joined with " + ".
 * @errors #N/A naming the nearest loads below and above where the plates do not make the load.
 * @example =SPARE.PLATES(142.5)
 * @example =SPARE.PLATES(110, 20, {25,1;15,3;10,1})
 * @source Plates of 25 to 2.5 and bars of 20 and 15 kg: IWF Technical and Competition Rules; 1.25 and the pound plates: common practice, no source.
 */
export function plates(
  load: unknown[][],
  bar?: unknown[][],
  plates?: unknown[][],
  nearest?: NearestChoice[][],
): unknown[][] {
  const rack = readPlates(plates);
  const loaders = new Map<number, BarLoader>();
  const loaderFor = (bar: number) => {
    const known = loaders.get(bar) ?? barLoader({ bar, plates: rack.plates });
    loaders.set(bar, known);
    return known;
  };
  return lift(
    {
      load: required(load, quantities.load()),
      bar: setting(bar, quantities.above0("bar", "a bar's weight above 0"), rack.bar),
      nearest: choice(nearest, "nearest", NearestChoice, NearestChoice.exact),
    },
    ({ load, bar, nearest }) => loaderFor(bar)(load, nearest).join(" + ") || "bar only",
  );
}

const PLATE_COLUMNS = [
  quantities.above0("plate", "a plate's weight above 0"),
  quantities.whole("pairs", "a whole number of pairs, or a blank for no limit", 1000),
];

/** The plates that were asked for, with the bar that goes with them. */
function readPlates(given: unknown): { readonly bar: number; readonly plates: readonly Plate[] } {
  const range = toRange(given);
  const [[first]] = range.cells;
  const value = readCell(first);
  if (isSingle(range) && (value === null || value === 0)) return plateSets.kg;
  if (isSingle(range) && typeof value === "string" && numberInText(value) === undefined) {
    const name = matchWord(value, Object.keys(plateSets)) as keyof typeof plateSets | undefined;
    if (name !== undefined) return plateSets[name];
    throw invalid(`plates is ${quoted(value)}; expected "kg", "lb" or a column of plates`);
  }
  const rows = readTable(given, { name: "plates", columns: PLATE_COLUMNS, least: 1 });
  return {
    bar: plateSets.kg.bar,
    plates: rows.map((row) => ({
      weight: requiredIn(row, 0, PLATE_COLUMNS[0]),
      ...(row.numbers[1] === null ? {} : { pairs: row.numbers[1] }),
      row: row.row,
    })),
  };
}

/**
 * @customenum {string}
 */
export enum WarmUpPart {
  /** All of them in one cell: "40 x 8, 60 x 5, 75 x 3, 90 x 1". */
  summary = "summary",
  /** How many warm-up sets there are. */
  sets = "sets",
  /** Their volume load, reps × load added up. */
  volumeLoad = "volume load",
}

/**
 * The warm-up sets that climb to a work set: a fraction of its load each, rounded, never below the bar. The work set itself is not listed.
 *
 * @customfunction WARMUPSETS
 * @param load The load of the work set, above 0; one value, or a range where part is given.
 * @param [bar] The bar's weight, below which no set goes; 0 or omitted for none.
 * @param [increment] The smallest step of the load, such as 2.5; 0 or omitted for no rounding.
 * @param [steps] Two columns, fraction of the work load and reps; 0.4 x 8, 0.6 x 5, 0.75 x 3, 0.9 x 1 if omitted.
 * @param [part] "summary" for all of them in one cell, "sets" or "volume load".
 * @returns A table with headings: load, reps, a row a step.
 * @errors #VALUE! for a load lighter than the bar, or a fraction above 1.
 * @example =SPARE.WARMUPSETS(100, 20, 2.5)
 * @example =SPARE.WARMUPSETS(100, 20, 2.5, , "summary")
 * @source Common practice, no source.
 */
export function warmUpSets(
  load: unknown[][],
  bar?: unknown[][],
  increment?: unknown[][],
  steps?: unknown[][],
  part?: WarmUpPart[][],
): unknown[][] {
  const ladder = readSteps(steps);
  const inputs = {
    load: required(load, quantities.load()),
    bar: setting(bar, quantities.atLeast0("bar", "a bar's weight, or 0 for none"), 0),
    increment: setting(increment, quantities.increment(), 0),
  };
  const setsFor = (values: { load: number; bar: number; increment: number }) =>
    warmUp(values.load, { ...values, ...(ladder === undefined ? {} : { steps: ladder }) });
  if (namesParts(part)) {
    return liftReport(inputs, WarmUpPart, part, (values) => {
      const sets = setsFor(values);
      return {
        summary: sets.map(({ load, reps }) => `${load} x ${reps}`).join(", "),
        sets: sets.length,
        volumeLoad: sets.reduce((sum, { load, reps }) => sum + load * reps, 0),
      };
    });
  }
  const work = readOne(inputs.load);
  const values = { bar: readOne(inputs.bar)!, increment: readOne(inputs.increment)! };
  if (work === null) return single("");
  return table(
    ["load", "reps"],
    setsFor({ load: work, ...values }).map(({ load, reps }) => [load, reps]),
  );
}

const STEP_COLUMNS = [
  quantities.above0("fraction", "a fraction of the work load, such as 0.6"),
  quantities.reps(),
];

/** The steps that were given; none where the usual ones will do. */
function readSteps(given: unknown): WarmUpStep[] | undefined {
  if (!isGiven(given)) return undefined;
  const rows = readTable(given, { name: "steps", columns: STEP_COLUMNS });
  if (rows.length === 0) return undefined;
  return rows.map((row) => ({
    fraction: requiredIn(row, 0, STEP_COLUMNS[0]),
    reps: requiredIn(row, 1, STEP_COLUMNS[1]),
    row: row.row,
  }));
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
  return list.length === 0 ? usual : list;
}
