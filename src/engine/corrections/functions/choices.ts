import type { BaseFunction, BaseValueObject } from "@univerjs/engine-formula";
import { NullValueObject, StringValueObject } from "@univerjs/engine-formula";
import { around } from "./around";

/**
 * SWITCH and IFS may choose a blank cell. The engine takes it for no result at all, and answers with #N/A, so it gets
 * something else in place of each blank that may be chosen.
 */
export const choiceFunctions = (): readonly BaseFunction[] => [
  // What is sought, then pairs of a value and a result, and perhaps a last result for all else.
  choosing("SWITCH", (at, count) => at > 0 && (at % 2 === 0 || at === count - 1)),
  // Pairs of a condition and a result.
  choosing("IFS", (at) => at % 2 === 1),
];

const choosing = (name: string, isResult: (at: number, count: number) => boolean) =>
  around(name, (within, ...values) => {
    const given = values.map((value, at) => {
      const mayBeChosen = isResult(at, values.length);
      return mayBeChosen ? eachCell(value, (cell) => (cell.isNull() ? BLANK : cell)) : value;
    });
    return eachCell(within(...given), (cell) => (cell === BLANK ? NullValueObject.create() : cell));
  });

const BLANK = new StringValueObject("");

function eachCell(
  value: BaseValueObject,
  change: (cell: BaseValueObject) => BaseValueObject,
): BaseValueObject {
  // A cell that was never filled is passed over the first time, and made a blank.
  return value.isArray() ? value.mapValue((cell) => cell).mapValue(change) : change(value);
}
