import { setting } from "../../cells";
import { e1rmBand as band, e1rmBandOfAll } from "../../core/strength/oneRepMax";
import { liftRow } from "../answer";
import { ALL_EQUATIONS, equationOrAll } from "../equation";
import * as quantities from "../quantities";
import { setInputs } from "./setInputs";

/**
 * @customenum {string}
 */
export enum E1rmBandPart {
  /** The e1RM if fewer reps were left than called. */
  low = "low",
  /** The e1RM as called. */
  estimate = "estimate",
  /** The e1RM if more reps were left than called. */
  high = "high",
}

/**
 * The equations, and all of them at once.
 *
 * @customenum {string}
 */
export enum BandEquationChoice {
  /** Epley 1985: 1 / (1 + t/30). The usual one. */
  epley = "epley",
  /** Brzycki 1993: (37 − t) / 36, up to 15 reps to failure. */
  brzycki = "brzycki",
  /** Lander 1985: (101.3 − 2.67123 t) / 100, up to 15 reps to failure. */
  lander = "lander",
  /** Lombardi 1989: t to the power of −0.10. */
  lombardi = "lombardi",
  /** Mayhew et al. 1992: (52.2 + 41.9 e^(−0.055 t)) / 100. */
  mayhew = "mayhew",
  /** O'Conner et al. 1989: 1 / (1 + 0.025 t). */
  oconner = "oconner",
  /** Wathan 1994: (48.8 + 53.8 e^(−0.075 t)) / 100. */
  wathan = "wathan",
  /** The lowest and the highest of all that reach so many reps. */
  all = "all",
}

/**
 * The e1RM with the range it could have if the call of the reserve is wrong by a rep or so, and by which equation you ask: low, estimate, high.
 *
 * @customfunction E1RMBAND
 * @param load {@phrase loadDone}
 * @param reps {@phrase repsDone}
 * @param [reserve] Reps in reserve as called, 0 or more; 0 if omitted, not recorded if blank.
 * @param [reserveError] How many reps the call may be wrong by, either way; 1 if omitted, 0 for none.
 * @param [equation] A published equation, "epley" if omitted, the lifter's own curve constant, or "all" for the lowest and the highest over all published equations that reach so many reps.
 * @param [part] "low", "estimate" or "high" for that one value in one cell.
 * @returns A row: low, estimate, high, in the unit of the load. Never fewer reps than were done; with "all", the estimate is Epley's.
 * @errors #VALUE! when reps plus reserve plus reserveError is past the equation's reach.
 * @example =SPARE.E1RMBAND(100, 5, 2)
 * @example =SPARE.E1RMBAND(60, 20, 0, 1, "all")
 * @example =SPARE.E1RMBAND(100, 6, 1, 3, , "high")
 * @source Equations as compared by LeSuer et al. 1997, J Strength Cond Res 11:211-213; the band by arithmetic.
 */
export function e1rmBand(
  load: unknown[][],
  reps: unknown[][],
  reserve?: unknown[][],
  reserveError?: unknown[][],
  equation?: BandEquationChoice[][],
  part?: E1rmBandPart[][],
): unknown[][] {
  return liftRow(
    {
      ...setInputs(load, reps, reserve),
      reserveError: setting(
        reserveError,
        quantities.atLeast0("reserveError", "a number of reps, 0 or more"),
        1,
      ),
      equation: equationOrAll(equation),
    },
    E1rmBandPart,
    part,
    ({ load, reps, reserve, reserveError, equation }) =>
      equation === ALL_EQUATIONS
        ? e1rmBandOfAll(load, reps, reserve, reserveError)
        : band(load, reps, reserve, reserveError, equation),
  );
}
