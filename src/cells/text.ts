/** Text as cells hold it: which text is a number, which is a missing value, which can be a heading. */

import { visible } from "./visible";

const NUMBER = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i;

/** "1,250" is 1.25 to one reader and 1250 to the next. "0,125" is not: nobody groups after a zero. */
const AMBIGUOUS = /^[+-]?[1-9]\d{0,2},\d{3}$/;

/** Units that a number may carry by mistake. "RM" is none: "10RM" is a heading. */
const UNIT =
  "kgs?|kilos?|kilograms?|lbs?|#|pounds?|g|st|cm|mm|m|metres?|meters?|in|ft|s|secs?|seconds?|mins?|minutes?|h|hrs?|hours?|w|watts?|n|%|x|reps?|sets?|rir|rpe|days?|weeks?|wks?";
/** A number as people write it, grouped or not ("1 250", "1'250.5"), by itself or followed by a unit. */
const NUMBER_AS_WRITTEN = new RegExp(`^[+-]?[\\d.,'’\\s]*\\d[.,]?\\s*((${UNIT})\\.?)?$`, "i");

/** The number this text wholly is, with a point or a comma for the decimals; otherwise undefined. */
export function numberInText(text: string): number | undefined {
  const trimmed = tidy(text);
  if (!NUMBER.test(trimmed) || AMBIGUOUS.test(trimmed)) return undefined;
  const value = Number(trimmed.replace(",", "."));
  return Number.isFinite(value) ? value : undefined;
}

/** Text that could be a number with grouped thousands, or one with a decimal comma. */
export const isAmbiguousNumber = (text: string) => AMBIGUOUS.test(tidy(text));

/** Text without a digit is how the trade writes a missing value: "DNS", "inj", a dash. "½" is a digit here. */
export const isMissingText = (text: string) => !/[\p{Nd}¼½¾⅓⅔]/u.test(text);

/** Text that can head a column: anything but a number, or a number followed only by a unit. */
export function isHeadingText(text: string): boolean {
  return numberInText(text) === undefined && !NUMBER_AS_WRITTEN.test(tidy(text));
}

/** Without outer blanks, and with the hyphen that stands for the typographer's minus sign. */
const tidy = (text: string) => text.trim().replace("\u2212", "-");

/** The text as a message shows it: quoted, and cut where it runs long. */
export const quoted = (text: string) => `"${visible(shortened(text))}"`;

/** Text for a message, in which nobody reads more than a few words of it. */
export const shortened = (text: string) => (text.length > 40 ? `${text.slice(0, 39)}…` : text);
