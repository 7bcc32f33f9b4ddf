import { barLoader } from "../core/load/plates";
import { nextLoad, targetLoad } from "../core/load/targetLoad";
import { BadInput, NoAnswer } from "../core/problem";
import { equations, ownCurve, type Equation } from "../core/strength/equations";
import { e1rmBand } from "../core/strength/oneRepMax";
import type { Card, CardLift, PlannedSet } from "./card";

/** The chart's rows and columns, as `LOADCHART` has them unless told otherwise. */
export const CHART_REPS = Array.from({ length: 12 }, (_rep, index) => index + 1);
export const CHART_RESERVES = [0, 1, 2, 3, 4];

/** How many reps a call may be wrong by, as `E1RMBAND` takes it unless told otherwise. */
const CALL_ERROR = 1;

/** A row of the chart: reps, and the load for each reserve; none past the equation's reach. */
export interface ChartRow {
  readonly reps: number;
  readonly loads: readonly (number | undefined)[];
}

/** The loads of one lift, reps down and reserves across. */
export function chartOf(card: Card, { oneRepMax }: CardLift): ChartRow[] {
  const equation = equationOf(card);
  return CHART_REPS.map((reps) => ({
    reps,
    loads: CHART_RESERVES.map((reserve) =>
      reps + reserve > equation.cap
        ? undefined
        : targetLoad(oneRepMax, reps + reserve, card.increment, equation),
    ),
  }));
}

/** The load of a planned set; none where it reaches past the equation. */
export function plannedLoad(card: Card, { lift, reps, reserve }: PlannedSet): number | undefined {
  const found = card.lifts.find(({ name }) => name === lift);
  const equation = equationOf(card);
  if (!found || reps + reserve > equation.cap) return undefined;
  return targetLoad(found.oneRepMax, reps + reserve, card.increment, equation);
}

/** A set as the lifter tells it, and the set that comes next. */
export interface SetDone {
  readonly load: number;
  readonly reps: number;
  readonly reserve: number;
  readonly targetReps: number;
  readonly targetReserve: number;
}

/** What a set says: the maximum with its band, and what to put on the bar next. */
export interface Answer {
  readonly low: number;
  readonly estimate: number;
  readonly high: number;
  readonly nextLoad: number;
}

/** The answer to a set; the core's own refusal where there is none. */
export function answerTo(card: Card, set: SetDone): Answer {
  const equation = equationOf(card);
  const band = e1rmBand(set.load, set.reps, set.reserve, CALL_ERROR, equation);
  const next = nextLoad(set, set.targetReps + set.targetReserve, card.increment, equation);
  return { ...band, nextLoad: next };
}

/** What goes on each side of the bar; where the plates do not make the load, those of the nearest below. */
export interface Side {
  /** Largest first; none is the bar alone. */
  readonly plates: readonly number[];
  readonly exact: boolean;
}

/** The plates of one side for a load; none for a load lighter than the bar. */
export function sideFor(card: Card, load: number): Side | undefined {
  const loader = barLoader(card);
  const exact = unlessRefused(() => loader(load));
  if (exact) return { plates: exact, exact: true };
  const below = unlessRefused(() => loader(load, "below"));
  return below && { plates: below, exact: false };
}

function unlessRefused<T>(compute: () => T): T | undefined {
  try {
    return compute();
  } catch (error) {
    if (error instanceof NoAnswer || error instanceof BadInput) return undefined;
    throw error;
  }
}

/** The curve that a card's loads come from. */
function equationOf({ equation }: Card): Equation {
  return typeof equation === "number" ? ownCurve(equation) : equations[equation];
}
