import { required, setting } from "../../cells";
import { changeScore as scoreChange } from "../../core/testing/changeScore";
import { liftRow } from "../answer";
import * as quantities from "../quantities";
import { typedLift, type Given } from "../typed";
import { errorInputs, type ErrorCells } from "./errorInputs";

/**
 * @customenum {string}
 */
export enum ChangeScorePart {
  /** After − before. */
  change = "change",
  /** The change as a fraction of the score before. */
  percent = "percent",
  /** Lower end of the true change's interval. */
  low = "low",
  /** Upper end of the true change's interval. */
  high = "high",
  /** The change in units of what test error alone gives. */
  ratio = "ratio",
  /** How likely such a change is from test error alone, two-sided. */
  p = "p",
  /** The chance that the true increase is more than the smallest that matters. */
  chance = "chance",
  /** What the interval comes to, in words. */
  reading = "reading",
}

/**
 * Is this athlete's change real, or could the test have wobbled? The interval of the true change decides. For a whole squad tested at once use SQUADCHANGE: of twenty athletes who did not change, one comes out "real" by chance.
 *
 * @customfunction CHANGESCORE
 * @param before The score before; 0 counts as blank.
 * @param after The score after, in the same unit; 0 counts as blank.
 * @param typicalError {@phrase typicalError}
 * @param [smallest] {@phrase smallest}
 * @param [confidence] {@phrase confidence}
 * @param [df] {@phrase errorDf}
 * @param [part] {@phrase partOfRow reading}
 * @returns A row: change, percent (a fraction), low, high, ratio, p, chance (that the true increase is above smallest), reading: "within test error", "real increase" or "real decrease", either of them with ", perhaps too small to matter" where the interval begins below smallest, or "real, too small to matter".
 * @errors #VALUE! for a confidence that is not a fraction; "" where a score is missing ("DNS").
 * @example =SPARE.CHANGESCORE(146, 170, 7.6)
 * @example =SPARE.CHANGESCORE(B2:B15, C2:C15, 2.1, 1, , 14, "reading")
 * @source Weir 2005, J Strength Cond Res 19:231-240; Hopkins 2000, Sports Med 30:1-15.
 */
export function changeScore(
  before: unknown[][],
  after: unknown[][],
  typicalError: unknown[][],
  smallest?: unknown[][],
  confidence?: unknown[][],
  df?: unknown[][],
  part?: ChangeScorePart[][],
): unknown[][] {
  const inputs = scoreInputs({ before, after, typicalError, smallest, confidence, df });
  return liftRow(inputs, ChangeScorePart, part, scoreChange);
}

/** Two scores of an athlete, and what is known about the test. */
const scoreInputs = (cells: Given<"before" | "after", "smallest"> & ErrorCells) => ({
  before: required(cells.before, quantities.score("before")),
  after: required(cells.after, quantities.score("after")),
  smallest: setting(cells.smallest, quantities.smallest(), 0),
  ...errorInputs(cells),
});

/** The typed half of CHANGESCORE: each athlete's change and its reading. */
export const computeChangeScore = typedLift(scoreInputs, scoreChange);
