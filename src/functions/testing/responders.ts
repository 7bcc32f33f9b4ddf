import { readOne, report, required, single } from "../../cells";
import { responders as countResponders } from "../../core/testing/responders";
import { readPairs } from "../pairs";
import * as quantities from "../quantities";
import { readConfidence } from "../settings";
import { typed, type Given } from "../typed";

/**
 * @customenum {string}
 */
export enum RespondersPart {
  /** Athletes with both scores. */
  n = "n",
  /** Athletes left out because a score is missing. */
  dropped = "dropped",
  /** Athletes who changed by more than the threshold. */
  responders = "responders",
  /** Their share. */
  share = "share",
  /** Lower end of the share's interval. */
  low = "low",
  /** Upper end of the share's interval. */
  high = "high",
  /** Athletes who did not increase at all. */
  noIncrease = "no increase",
}

/**
 * How many athletes changed by more than a threshold. Some pass it by test error alone: see RESPONSESHARE.
 *
 * @customfunction RESPONDERS
 * @param before {@phrase scoresBefore}
 * @param after {@phrase scoresAfter}
 * @param threshold The change to exceed, in the unit of the scores; 0 is a value.
 * @param [confidence] {@phrase confidence}
 * @param [part] {@phrase parts share}
 * @returns A report of two columns: n, dropped, responders, share (a fraction), low, high, no increase.
 * @errors #N/A without a complete pair; #VALUE! naming the row for a bad cell.
 * @example =SPARE.RESPONDERS({100;110;95;120;105}, {104;113;97;126;106}, 2.5)
 * @source Interval: Wilson 1927, J Am Stat Assoc 22:209-212.
 */
export function responders(
  before: unknown[][],
  after: unknown[][],
  threshold: unknown[][],
  confidence?: unknown[][],
  part?: RespondersPart[][],
): unknown[][] {
  const counted = computeResponders({ before, after, threshold, confidence });
  return counted === undefined ? single("") : report(RespondersPart, part, counted);
}

/** The typed half of RESPONDERS; nothing while the threshold is not filled in. */
export const computeResponders = typed(
  (cells: Given<"before" | "after" | "threshold", "confidence">) => {
    const { columns, dropped } = readPairs(cells.before, cells.after);
    const limit = readOne(required(cells.threshold, quantities.anyNumber("threshold", "a change")));
    const level = readConfidence(cells.confidence);
    if (limit === null) return undefined;
    return { ...countResponders(columns.before, columns.after, limit, level), dropped };
  },
);
