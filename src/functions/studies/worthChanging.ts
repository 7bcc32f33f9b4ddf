import { readOne, report, required, setting, single, type Quantity } from "../../cells";
import { USUAL_SCALE, worthChanging as judge } from "../../core/studies/worthChanging";
import * as quantities from "../quantities";
import { readConfidence } from "../settings";
import { typed, type Given } from "../typed";
import { readStudies } from "./readStudies";

/**
 * @customenum {string}
 */
export enum WorthChangingPart {
  /** What the earlier studies led one to expect of one more. */
  before = "before",
  /** Lower end of where one more study would have lain. */
  beforeLow = "before low",
  /** Upper end of where one more study would have lain. */
  beforeHigh = "before high",
  /** The new study's effect, drawn toward what the earlier ones led one to expect. */
  shrunkNewStudy = "shrunk new study",
  /** Lower end of its interval. */
  shrunkLow = "shrunk low",
  /** Upper end of its interval. */
  shrunkHigh = "shrunk high",
  /** What your squad can expect to gain, in its own units. */
  expectedGain = "expected gain",
  /** Lower end of the gain's prediction. */
  gainLow = "gain low",
  /** Upper end of the gain's prediction. */
  gainHigh = "gain high",
  /** The chance that the gain is above the smallest that matters. */
  chanceAboveSmallest = "chance above smallest",
  /** The chance of a loss larger than the smallest that matters. */
  chanceBelowMinusSmallest = "chance below minus smallest",
  /** "change", "keep" or "test it first". */
  reading = "reading",
}

/**
 * Should the next block change, now that a new study is out? Reads it in the light of the earlier ones, and predicts what one more squad, yours, would gain.
 *
 * @customfunction WORTHCHANGING
 * @param effects The earlier studies' standardized effects, a row a study.
 * @param standardErrors {@phrase standardErrors}
 * @param newEffect The new study's effect, on the same scale; 0 is a value.
 * @param newStandardError {@phrase itsStandardError}
 * @param squadSd The spread between your athletes, above 0: it turns the effect into your units.
 * @param smallest The smallest gain worth a change, in your units, 0 or more. At 0 any loss is harm, and "change" needs a chance of 0.95.
 * @param [confidence] {@phrase confidence}
 * @param [scale] How far true effects of studies may differ, in standard deviations; 0.5 if omitted.
 * @param [part] {@phrase parts reading}
 * @returns A report of two columns: before (low, high), shrunk new study (low, high), expected gain (low, high), chance above smallest, chance below minus smallest, reading: "change" where the first chance is 0.8 or more and the second 0.05 or less, "keep" where the first is 0.2 or less, else "test it first".
 * @errors #N/A under 2 earlier studies; #VALUE! naming the row for a bad cell.
 * @example =SPARE.WORTHCHANGING({0.31;0.12;0.55;0.2;0.43}, {0.15;0.22;0.3;0.12;0.25}, 0.6, 0.2, 8, 1)
 * @source Gelman et al. 2013, Bayesian Data Analysis, ch. 5.4; half-normal prior: Röver et al. 2021, Res Synth Methods 12:448-474; the limits of the reading (0.8, 0.05, 0.2) are ours.
 */
export function worthChanging(
  effects: unknown[][],
  standardErrors: unknown[][],
  newEffect: unknown[][],
  newStandardError: unknown[][],
  squadSd: unknown[][],
  smallest: unknown[][],
  confidence?: unknown[][],
  scale?: unknown[][],
  part?: WorthChangingPart[][],
): unknown[][] {
  const evidence = { effects, standardErrors, newEffect, newStandardError };
  const decision = computeWorthChanging({ ...evidence, squadSd, smallest, confidence, scale });
  return decision === undefined ? single("") : report(WorthChangingPart, part, decision);
}

/** The typed half of WORTHCHANGING; nothing where a single value that it needs is not filled in yet. */
export const computeWorthChanging = typed(
  (
    cells: Given<
      "effects" | "standardErrors" | "newEffect" | "newStandardError" | "squadSd" | "smallest",
      "confidence" | "scale"
    >,
  ) => {
    const { columns } = readStudies(cells.effects, cells.standardErrors);
    const one = (given: unknown, quantity: Quantity) => readOne(required(given, quantity));
    const effect = one(cells.newEffect, quantities.anyNumber("newEffect", "an effect"));
    const standardError = one(cells.newStandardError, quantities.spread("newStandardError"));
    const sd = one(cells.squadSd, quantities.spread("squadSd"));
    const smallest = one(cells.smallest, quantities.atLeast0("smallest", "a gain of 0 or more"));
    const options = {
      confidence: readConfidence(cells.confidence),
      scale: readOne(setting(cells.scale, quantities.spread("scale"), USUAL_SCALE))!,
    };
    if (effect === null || standardError === null || sd === null || smallest === null) {
      return undefined;
    }
    return judge(columns, { effect, standardError }, { sd, smallest }, options);
  },
);
