import { CellError, invalid } from "./error";
import { isAmbiguousNumber, isMissingText, numberInText, quoted } from "./text";
import { HostError, type CellValue } from "./value";

/** A number an argument stands for: its name in messages, what it may be, and what zero means for it. */
export interface Quantity {
  /** The argument's name, as the function's help spells it. */
  readonly name: string;
  /** What was expected, as a message ends: "a number above 0". */
  readonly expected: string;
  /** Whether the number is allowed. */
  readonly accepts: (value: number) => boolean;
  /**
   * Whether zero is a blank. Desktop Excel passes a blank cell as 0, so a quantity that cannot be zero takes
   * every zero for a blank; one that can (reserve) takes it as it comes.
   */
  readonly zeroIsBlank: boolean;
  /** Whether a number of 40,000 and more can only be a date typed into the wrong column. */
  readonly neverADate?: boolean;
}

/** The serial number of 6 July 2009: nobody has logged that many reps. */
const FIRST_DATE = 40_000;

/** The cell's number, `null` where it holds none (blank, or text without digits), or what is wrong with it. */
export function readQuantity(value: CellValue, quantity: Quantity): number | null | CellError {
  if (typeof value === "string") {
    const number = numberInText(value);
    if (number !== undefined) return readNumber(number, quantity);
    return isMissingText(value) ? null : textProblem(value, quantity);
  }
  if (typeof value === "number") return readNumber(value, quantity);
  return value === null ? null : otherProblem(value, quantity);
}

/** As `readQuantity`, for a setting: there, text that is no number is a mistake, not a missing value. */
export function readSetting(value: CellValue, quantity: Quantity): number | null | CellError {
  if (typeof value === "string" && numberInText(value) === undefined) {
    return textProblem(value, quantity);
  }
  return readQuantity(value, quantity);
}

function readNumber(value: number, quantity: Quantity): number | null | CellError {
  if (value === 0 && quantity.zeroIsBlank) return null;
  if (value >= FIRST_DATE && quantity.neverADate) {
    return invalid(
      `${quantity.name} is ${shortNumber(value)}, which looks like a date; expected ${quantity.expected}`,
    );
  }
  if (!quantity.accepts(value) || isOutOfAllProportion(value)) {
    return invalid(`${quantity.name} is ${shortNumber(value)}; expected ${quantity.expected}`);
  }
  return value;
}

/** Sizes that nothing in a sheet has, and that arithmetic would run over its edge with. */
const isOutOfAllProportion = (value: number) =>
  Math.abs(value) > 1e100 || (value !== 0 && Math.abs(value) < 1e-100);

function textProblem(text: string, { name, expected }: Quantity): CellError {
  if (isAmbiguousNumber(text)) {
    const point = text.trim().replace(",", ".");
    const grouped = text.trim().replace(",", "");
    return invalid(
      `${name} is text, ${quoted(text)}, which can mean ${point} or ${grouped}; expected ${expected}`,
    );
  }
  return invalid(`${name} is text, ${quoted(text)}; expected ${expected}`);
}

function otherProblem(value: boolean | HostError, { name, expected }: Quantity): CellError {
  if (value instanceof HostError) return passOn(value, name);
  return invalid(`${name} is ${value ? "TRUE" : "FALSE"}; expected ${expected}`);
}

/** The error a cell already holds, passed on; one that no function may return is named in a #VALUE!. */
export function passOn(error: HostError, name: string): CellError {
  const message = `${name} holds ${error.code}`;
  switch (error.code) {
    case "#N/A":
    case "#DIV/0!":
    case "#NUM!":
    case "#NULL!":
      return new CellError(error.code, message);
    default:
      return invalid(message);
  }
}

/** A number as a message shows it: no binary dust. */
export const shortNumber = (value: number) => String(Number(value.toPrecision(9)));
