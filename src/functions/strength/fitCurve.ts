import { report } from "../../cells";
import { fitCurve as fit } from "../../core/strength/fitCurve";
import { readConfidence } from "../settings";
import { typed, type Given } from "../typed";
import { readSets } from "./readSets";

/**
 * @customenum {string}
 */
export enum FitCurvePart {
  /** How many sets the curve was fitted to. */
  sets = "sets",
  /** The lifter's 1RM from the curve. */
  oneRepMax = "one-rep max",
  /** Lower end of the interval of the 1RM. */
  oneRepMaxLow = "one-rep max low",
  /** Upper end of the interval of the 1RM. */
  oneRepMaxHigh = "one-rep max high",
  /** The lifter's curve constant, for any equation argument. */
  constant = "constant",
  /** Lower end of the interval of the constant. */
  constantLow = "constant low",
  /** Upper end of the interval of the constant. */
  constantHigh = "constant high",
  /** Reps to failure at 80% of the 1RM. */
  repsAt80 = "reps at 80%",
  /** Spread of the reps about the curve, in reps. */
  residualSd = "residual sd",
  /** Share of the reps' variance that the curve explains. */
  rSquared = "r squared",
}

/**
 * The lifter's own load-repetition curve from their own sets: their 1RM, and a constant that goes into any equation argument in place of a published name.
 *
 * @customfunction FITCURVE
 * @param load The loads of the sets, above 0, in one unit.
 * @param reps {@phrase repsDone}
 * @param [reserve] {@phrase reserveOfSet}
 * @param [confidence] {@phrase confidence}
 * @param [part] {@phrase parts constant}
 * @returns A report of two columns: sets, one-rep max (low, high), constant (low, high), reps at 80%, residual sd (in reps), r squared. Sets with a called reserve widen the intervals, for all calls may be off alike.
 * @errors #N/A under 3 sets, under 2 different loads, where the loads do not fall as the reps rise, or where the sets are too alike to tell the maximum: take heavy and light ones. #VALUE! for more than 30 reps to failure.
 * @example =SPARE.FITCURVE({120;110;100;92.5;80}, {1;3;5;8;12})
 * @example =SPARE.E1RM(B2, C2, D2, SPARE.FITCURVE(B2:B20, C2:C20, D2:D20&"", , "constant"))
 * @source Least squares of the reps to failure t on 1 / load, where load = 1RM / (1 + (t − 1) / c): Epley's curve (1985) with the constant left free; the 1RM's interval by Fieller 1954, J R Stat Soc B 16:175-185.
 */
export function fitCurve(
  load: unknown[][],
  reps: unknown[][],
  reserve?: unknown[][],
  confidence?: unknown[][],
  part?: FitCurvePart[][],
): unknown[][] {
  return report(FitCurvePart, part, computeFitCurve({ load, reps, reserve, confidence }));
}

/** The typed half of FITCURVE: the lifter's 1RM and their curve's constant. */
export const computeFitCurve = typed((cells: Given<"load" | "reps", "reserve" | "confidence">) =>
  fit(readSets(cells), readConfidence(cells.confidence)),
);
