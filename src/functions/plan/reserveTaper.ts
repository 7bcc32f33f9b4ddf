import { isGiven, listItem, readOne, required, setting, single } from "../../cells";
import { reserveInWeek, reserveTaper as taper } from "../../core/plan/taper";
import { lift } from "../answer";
import * as quantities from "../quantities";

/**
 * Reps in reserve week by week, straight from the first week to the last: sets get closer to failure as the block goes on.
 *
 * @customfunction RESERVETAPER
 * @param weeks How many weeks the block has, a whole number from 1.
 * @param from Reserve in week 1, 0 or more.
 * @param to Reserve in the last week, 0 or more.
 * @param [week] One week, or a range of weeks, for those weeks alone; for blocks that repeat write MOD(week − 1, weeks) + 1.
 * @param [step] What the reserve is rounded to, a tie up; whole reps if omitted, 0 for no rounding.
 * @returns A column, a week a row; where week is given, the reserve of that week in the shape of the range. One week gives the last reserve.
 * @errors #VALUE! for a week past the last.
 * @example =SPARE.RESERVETAPER(6, 4, 2, , 0.5)
 * @example =SPARE.RESERVETAPER(4, 3, 2, A2:A5)
 * @source Common practice, no source: a straight line, rounded to the cautious side.
 */
export function reserveTaper(
  weeks: unknown[][],
  from: unknown[][],
  to: unknown[][],
  week?: unknown[][],
  step?: unknown[][],
): unknown[][] {
  const inputs = {
    weeks: required(weeks, quantities.weeks()),
    from: required(from, quantities.reserve("from")),
    to: required(to, quantities.reserve("to")),
    step: setting(step, quantities.atLeast0("step", "a step of 0 or more"), 1),
  };
  if (isGiven(week)) {
    const oneWeek = quantities.whole("week", "a whole number of a week, from 1", Infinity);
    return lift({ ...inputs, week: listItem(week, oneWeek) }, ({ week, ...block }) =>
      reserveInWeek(block, week),
    );
  }
  const block = {
    weeks: readOne(inputs.weeks),
    from: readOne(inputs.from),
    to: readOne(inputs.to),
  };
  const { weeks: length, from: first, to: last } = block;
  if (length === null || first === null || last === null) return single("");
  return taper({ weeks: length, from: first, to: last, step: readOne(inputs.step)! }).map(
    (reserve) => [reserve],
  );
}
