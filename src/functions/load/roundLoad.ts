import { choice, required, setting } from "../../cells";
import { roundToMultiple } from "../../core/load/round";
import { lift } from "../answer";
import { DirectionChoice } from "../choices";
import * as quantities from "../quantities";

/**
 * Rounds a load to a multiple of the smallest step: to the nearest (a tie goes down), down or up.
 *
 * @customfunction ROUNDLOAD
 * @param load The load, above 0.
 * @param increment The smallest step of the load, such as 2.5; 0 for no rounding.
 * @param [direction] "nearest" if omitted, "down" or "up".
 * @returns The rounded load.
 * @errors #VALUE! for a step below 0.
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
