import type { BaseFunction, BaseValueObject } from "@univerjs/engine-formula";
import { ArrayValueObject, ErrorType, ErrorValueObject } from "@univerjs/engine-formula";
import { isTooLarge } from "../sizes";
import { around } from "./around";

/** Functions that make as much as they are told to, in which a mistyped size would take all memory. */
export const heldToSize = (): readonly BaseFunction[] => [
  ...["MAKEARRAY", "RANDARRAY", "SEQUENCE"].map((name) =>
    around(name, (within, ...values) => {
      const [rows, columns] = values.map(sizeIn);
      return isTooLarge(rows ?? 1, columns ?? 1) ? wrong() : within(...values);
    }),
  ),
  around("EXPAND", (within, array, rows, columns, ...rest) => {
    const wanted = (size: typeof rows) => (size && !size.isNull() ? sizeIn(size) : 1);
    return isTooLarge(wanted(rows), wanted(columns))
      ? wrong()
      : within(array, rows, columns, ...rest);
  }),
  // Every cell of a product adds up a row of the one and a column of the other.
  around("MMULT", (within, one, other) => {
    const rows = one instanceof ArrayValueObject ? one.getRowCount() * one.getColumnCount() : 1;
    const columns = other instanceof ArrayValueObject ? other.getColumnCount() : 1;
    return rows * columns > MOST_PRODUCTS ? wrong() : within(one, other);
  }),
];

/** A few seconds' work. */
const MOST_PRODUCTS = 20_000_000;

const wrong = () => ErrorValueObject.create(ErrorType.VALUE);

function sizeIn(value: BaseValueObject): number {
  const size = Number(
    value.isArray() ? (value as ArrayValueObject).getFirstCell().getValue() : value.getValue(),
  );
  return Number.isFinite(size) ? size : 1;
}
