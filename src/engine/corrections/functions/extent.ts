import {
  ErrorType,
  ErrorValueObject,
  NumberValueObject,
  type BaseFunction,
  type BaseValueObject,
} from "@univerjs/engine-formula";
import type { Area } from "../../../formula/address";
import { isOnMissingSheet } from "../cellReading";
import { around } from "./around";
import { isReference, type Argument } from "./cellList";

/**
 * ROWS and COLUMNS from a range's edges. The engine reads its cells and remembers them: where `ROWS(B$2:B2)`
 * stands in B2 itself, as in lists that count their own rows, all that read B2 later read the blank that it was then.
 */
export const extentFunctions = (): readonly BaseFunction[] => [
  extent("ROWS", ({ startRow, endRow }) => endRow - startRow + 1),
  extent("COLUMNS", ({ startColumn, endColumn }) => endColumn - startColumn + 1),
];

const isValue = (argument: Argument): argument is BaseValueObject => !isReference(argument);

function extent(name: "ROWS" | "COLUMNS", count: (edges: Area) => number): BaseFunction {
  const corrected = around(name, (within, ...values: Argument[]) => {
    const [value] = values;
    if (value === undefined || !isReference(value)) return within(...values.filter(isValue));
    if (isOnMissingSheet(value)) return ErrorValueObject.create(ErrorType.REF);
    const counted = count(value.getRangePosition());
    return Number.isFinite(counted)
      ? NumberValueObject.create(counted)
      : within(value.toArrayValueObject(false));
  });
  corrected.needsReferenceObject = true;
  return corrected;
}
