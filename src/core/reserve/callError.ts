import { BadInput } from "../problem";
import { below, difference } from "../statistics/compare";

/**
 * How far off one call was: the lifter called a reserve after `repAtCall` reps, went on to failure, and it took
 * `repsToFailure` reps in all. Above zero there was more left than they said, below zero less.
 *
 * Source: common practice, no source.
 *
 * @param repAtCall - Reps done when it was called.
 * @param calledReserve - Reps they said were left.
 * @param repsToFailure - Reps there were in all.
 * @returns The error in reps.
 * @throws BadInput where failure came before the call.
 */
export function callError(repAtCall: number, calledReserve: number, repsToFailure: number): number {
  if (below(repsToFailure, repAtCall)) {
    throw new BadInput(
      `repsToFailure is ${repsToFailure}, fewer than the ${repAtCall} reps at the call; ` +
        "expected all reps of the set",
    );
  }
  return difference(difference(repsToFailure, repAtCall), calledReserve);
}
