import type { BaseFunction, BaseValueObject } from "@univerjs/engine-formula";
import { StringValueObject } from "@univerjs/engine-formula";
import { around } from "./around";
import { numberText } from "./numbers";

/**
 * Functions of text, and which of their arguments are text, by their places. Where they are given a number, the
 * engine takes all 17 digits of it, and a spreadsheet 15.
 */
const textPlaces: Readonly<Record<string, (place: number) => boolean>> = {
  CONCAT: () => true,
  CONCATENATE: () => true,
  EXACT: () => true,
  FIND: (place) => place < 2,
  LEFT: (place) => place === 0,
  LOWER: () => true,
  MID: (place) => place === 0,
  REPLACE: (place) => place === 0 || place === 3,
  REPT: (place) => place === 0,
  RIGHT: (place) => place === 0,
  SUBSTITUTE: (place) => place < 3,
  TEXTAFTER: (place) => place < 2,
  TEXTBEFORE: (place) => place < 2,
  TEXTJOIN: (place) => place !== 1,
  TRIM: () => true,
  UPPER: () => true,
};

export const numbersAsText = (): readonly BaseFunction[] =>
  Object.entries(textPlaces).map(([name, isText]) =>
    around(name, (within, ...values) =>
      within(...values.map((value, place) => (isText(place) ? spelled(value) : value))),
    ),
  );

/** A number as its text, alone or in an array; other values as they are. */
function spelled(value: BaseValueObject): BaseValueObject {
  if (value.isArray()) return value.mapValue(spelled);
  return value.isNumber() ? StringValueObject.create(numberText(Number(value.getValue()))) : value;
}
