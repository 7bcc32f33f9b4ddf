import type { compareToken } from "@univerjs/engine-formula";
import { BooleanValueObject } from "@univerjs/engine-formula";

/**
 * Sorts truth values after all numbers and all text, as a spreadsheet does. The engine does so too,
 * but it also says that `FALSE<>0` and `FALSE<>""` are false.
 */
export function sortTruthValuesLast(): void {
  const within = BooleanValueObject.prototype.compareBy;
  BooleanValueObject.prototype.compareBy = function (value, operator) {
    return typeof value === "boolean"
      ? within.call(this, value, operator)
      : BooleanValueObject.create(isAfter(operator));
  };
}

const isAfter = (operator: compareToken): boolean =>
  ([">", ">=", "<>"] as readonly string[]).includes(operator);
