import type { BaseValueObject } from "@univerjs/engine-formula";
import {
  BaseValueObject as Value,
  BooleanValueObject,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/engine-formula";
import { around } from "./functions/around";
import { asText } from "./functions/numbers";

type Operation = "plus" | "minus" | "multiply" | "divided" | "mod" | "pow";
const OPERATIONS: readonly Operation[] = ["plus", "minus", "multiply", "divided", "mod", "pow"];

/** An error on the right of an operator is the result; the engine makes another one of it. */
export function passErrorsOn(): void {
  for (const operation of OPERATIONS) {
    const within = NumberValueObject.prototype[operation];
    NumberValueObject.prototype[operation] = function (value: BaseValueObject) {
      return value.isError() ? value : within.call(this, value);
    };
  }
}

/** What is joined to a text by "&" has the digits that its cell would show, 15 and no more. */
export function joinAsShown(): void {
  Value.prototype.concatenate = function (value, toTheRight = 0) {
    const [own, other] = [asText(this.getValue()), asText(value)];
    return toTheRight ? own + other : other + own;
  };
}

/** In `A1="a*"` the star stands for itself. It stands for other text in a lookup or a criterion alone. */
export const literalCompare = () =>
  around("COMPARE", (within, one, other) => {
    literal = true;
    try {
      return within(one, other);
    } finally {
      literal = false;
    }
  });

let literal = false;

export function compareTextLiterally(): void {
  const { compareBy } = StringValueObject.prototype;
  StringValueObject.prototype.compareBy = function (value, operator, isCaseSensitive) {
    if (!literal || typeof value !== "string" || !/[*?]/.test(value)) {
      return compareBy.call(this, value, operator, isCaseSensitive);
    }
    const [own, given] = [this.getValue().toLowerCase(), value.toLowerCase()];
    const order = own === given ? 0 : own < given ? -1 : 1;
    return BooleanValueObject.create(fits(order, operator));
  };
}

function fits(order: number, operator: string): boolean {
  if (order === 0) return operator === "=" || operator === "<=" || operator === ">=";
  return operator === "<>" || operator.startsWith(order < 0 ? "<" : ">");
}
