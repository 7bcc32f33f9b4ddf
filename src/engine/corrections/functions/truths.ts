import type { BaseFunction, BaseValueObject } from "@univerjs/engine-formula";
import { BooleanValueObject, ErrorType, ErrorValueObject } from "@univerjs/engine-formula";
import { around } from "./around";

/** Where a condition is asked for, text is TRUE or FALSE if it says so, and an error if not. */
export const truthFunctions = (): readonly BaseFunction[] => [
  around("IF", (within, condition, ...values) => within(truth(condition), ...values)),
  ...["AND", "OR", "XOR"].map((name) =>
    // Text in a range is passed over.
    around(name, (within, ...values) => within(...values.map((value) => truthOf(value)))),
  ),
];

function truth(condition: BaseValueObject): BaseValueObject {
  if (!condition.isArray()) return truthOf(condition);
  const holdsText = condition.getArrayValue().some((row) => row.some((cell) => cell?.isString()));
  return holdsText ? condition.mapValue(truthOf) : condition;
}

function truthOf(value: BaseValueObject): BaseValueObject {
  if (!value.isString()) return value;
  const text = String(value.getValue()).toUpperCase();
  return text === "TRUE" || text === "FALSE"
    ? BooleanValueObject.create(text === "TRUE")
    : ErrorValueObject.create(ErrorType.VALUE);
}
