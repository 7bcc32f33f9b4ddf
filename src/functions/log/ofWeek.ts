import {
  CellError,
  HostError,
  invalid,
  isSingle,
  placeIn,
  readCell,
  readQuantity,
  toRange,
} from "../../cells";
import * as quantities from "../quantities";
import { typed, type Given } from "../typed";

/** The typed half of a function that makes one number of a week's days; nothing where the week is a single blank cell. */
export const ofWeek = (compute: (days: readonly number[]) => number) =>
  typed(({ loads }: Given<"loads">) => {
    const days = readDays(loads);
    const notFilledIn = days.length === 1 && days[0] === 0;
    return notFilledIn ? undefined : compute(days);
  });

/** A load a day, from every cell of a range: what is no number is a day of rest. */
function readDays(loads: unknown): number[] {
  const range = toRange(loads);
  const quantity = quantities.atLeast0("loads", "a day's load, 0 or more");
  return range.cells.flatMap((row, rowAt) =>
    row.map((raw, columnAt) => {
      const value = readCell(raw);
      const place = placeIn(range, rowAt, columnAt);
      if (value instanceof HostError && !isSingle(range)) {
        throw invalid(`${place} of loads holds ${value.code}`);
      }
      const day = readQuantity(value, quantity);
      if (day instanceof CellError) throw day.of(place);
      return day ?? 0;
    }),
  );
}
