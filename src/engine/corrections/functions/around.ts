import type { BaseFunction, BaseValueObject } from "@univerjs/engine-formula";
import { ALL_IMPLEMENTED_FUNCTIONS } from "@univerjs/engine-formula";

/** The engine's own computing of a function. */
export type Within = (...values: BaseValueObject[]) => BaseValueObject;

/** A function of the engine's with something done before or after. */
export function around(
  name: string,
  compute: (this: BaseFunction, within: Within, ...values: BaseValueObject[]) => BaseValueObject,
): BaseFunction {
  const own = ALL_IMPLEMENTED_FUNCTIONS.find(([, each]) => each === name)?.[0];
  if (!own) throw new Error(`the engine has no function ${name}`);
  const within = new own(name);
  const { calculate } = within;
  within.calculate = function (this: BaseFunction, ...values) {
    const inner: Within = (...given) => calculate.call(this, ...given) as BaseValueObject;
    return compute.call(this, inner, ...values);
  };
  return within;
}
