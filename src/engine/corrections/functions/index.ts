import type { BaseFunction } from "@univerjs/engine-formula";
import { StringValueObject } from "@univerjs/engine-formula";
import { literalCompare } from "../operators";
import { around } from "./around";
import { heldToSize } from "./arraySizes";
import { choiceFunctions } from "./choices";
import { conditionalFunctions } from "./conditional";
import { dayFunctions } from "./days";
import { extentFunctions } from "./extent";
import { image } from "./image";
import { lookupFunctions } from "./lookup";
import { numbersAsText } from "./numbersAsText";
import { studentFunctions } from "./student";
import { sum } from "./sum";
import { textFunctions } from "./texts";
import { truthFunctions } from "./truths";

/** The functions that are registered over the engine's own. */
export const correctedFunctions = (): readonly BaseFunction[] => [
  ...heldToSize(),
  ...choiceFunctions(),
  ...conditionalFunctions(),
  ...dayFunctions(),
  ...extentFunctions(),
  ...lookupFunctions(),
  ...numbersAsText(),
  ...studentFunctions(),
  ...textFunctions(),
  ...truthFunctions(),
  image(),
  literalCompare(),
  sum(),
  withoutPadding(),
];

/** The engine leaves room for a bracket behind an amount. */
const withoutPadding = () =>
  around("DOLLAR", (within, ...values) => {
    const amount = within(...values);
    return amount.isString() ? StringValueObject.create(String(amount.getValue()).trim()) : amount;
  });
