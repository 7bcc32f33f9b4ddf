import { readChoice, type Choices } from "./choice";
import type { CellError } from "./error";
import { isGiven, toRange, type Range } from "./grid";
import { readQuantity, readSetting, type Quantity } from "./quantity";
import type { CellValue } from "./value";

/**
 * One argument of a lifted function: the range it was given, and how one cell of it is read. `null` means that
 * the cell is not filled in yet, so that its row waits.
 */
export interface Argument<T> {
  readonly name: string;
  readonly range: Range;
  readonly read: (value: CellValue) => T | null | CellError;
  /** How its first row is judged when it may be a header. */
  readonly header: HeaderRole;
}

/**
 * Data columns are judged together; a list is judged alone and hides no header elsewhere; choices are never
 * judged, for they are text themselves.
 */
export type HeaderRole = "together" | "alone" | "never";

/** A number that must be there: its row waits while it is blank. */
export function required(argument: unknown, quantity: Quantity): Argument<number> {
  return {
    name: quantity.name,
    range: toRange(argument),
    read: (value) => readQuantity(value, quantity),
    header: "together",
  };
}

/** As `required`, for a list that comes from elsewhere than the data beside it. */
export const listItem = (argument: unknown, quantity: Quantity): Argument<number> => ({
  ...required(argument, quantity),
  header: "alone",
});

/** A number that is recorded or not: omitted altogether it is `omitted`; given but blank, its row waits. */
export function recorded(argument: unknown, quantity: Quantity, omitted: number): Argument<number> {
  return isGiven(argument) ? required(argument, quantity) : constant(quantity.name, omitted);
}

/** A number that may be missing from its row without holding the row up. */
export const optional = (argument: unknown, quantity: Quantity): Argument<number | undefined> => ({
  ...required(argument, quantity),
  read: (value) => readQuantity(value, quantity) ?? undefined,
});

/** A number with a usual value, which a blank stands for too. */
export function setting<T extends number | undefined>(
  argument: unknown,
  quantity: Quantity,
  usual: T,
): Argument<number | T> {
  return {
    name: quantity.name,
    range: toRange(argument),
    read: (value) => readSetting(value, quantity) ?? usual,
    header: "together",
  };
}

/** One of a few words, with a usual one, which a blank stands for too. */
export function choice<C extends Choices>(
  argument: unknown,
  name: string,
  choices: C,
  usual: C[keyof C],
): Argument<C[keyof C]> {
  return chosen(argument, name, (value) => readChoice(value, name, choices) ?? usual);
}

/** A choice read in the function's own way. */
export function chosen<T>(
  argument: unknown,
  name: string,
  read: (value: CellValue) => T | CellError,
): Argument<T> {
  return { name, range: toRange(argument), read, header: "never" };
}

/** A value that no cell gives. */
function constant<T>(name: string, value: T): Argument<T> {
  return { name, range: toRange(null), read: () => value, header: "never" };
}
