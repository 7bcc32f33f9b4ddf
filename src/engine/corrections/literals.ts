import {
  NumberValueObject,
  StringValueObject,
  ValueNodeFactory,
  ValueObjectFactory,
} from "@univerjs/engine-formula";

/**
 * Takes what is written in a formula for what it is: `"1:3"` and `"12%"` are text, also where the engine
 * would hand a function the time or the number that they spell, and 1E+15 and 0.30000000000000004 are
 * numbers, where the engine has text.
 */
export function readLiteralsAsWritten(): void {
  const { create } = ValueNodeFactory.prototype;
  ValueNodeFactory.prototype.create = function (token) {
    const node = create.call(this, token);
    node.execute = () => node.setValue(valueOf(token));
    return node;
  };
}

function valueOf(token: string) {
  const text = /^"([^]*)"$/.exec(token.trim())?.[1];
  if (text !== undefined) return StringValueObject.create(text.replaceAll('""', '"'));
  const number = token.trim() === "" ? NaN : Number(token);
  return Number.isFinite(number)
    ? NumberValueObject.create(number)
    : ValueObjectFactory.create(token);
}
