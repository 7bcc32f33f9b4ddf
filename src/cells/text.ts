/** Text as cells hold it: which text is a number, which is a missing value, which can be a heading. */

const NUMBER = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i;

/** "1,250" is 1.25 to one reader and 1250 to the next. "0,125" is not: nobody groups after a zero. */
const AMBIGUOUS = /^[+-]?[1-9]\d{0,2},\d{3}$/;

/** Units that a number may carry by mistake. "RM" is none: "10RM" is a heading. */
const UNIT =
  "kgs?|kilos?|kilograms?|lbs?|#|pounds?|g|st|cm|mm|m|metres?|meters?|in|ft|s|secs?|seconds?|mins?|minutes?|h|hrs?|hours?|w|watts?|n|%|x|reps?|sets?|rir|rpe|days?|weeks?|wks?";
const NUMBER_WITH_UNIT = new RegExp(`^[+-]?[\\d.,]+\\s*(${UNIT})\\.?$`, "i");

/** The number this text wholly is, with a point or a comma for the decimals; otherwise undefined. */
export function numberInText(text: string): number | undefined {
  const trimmed = text.trim().replace("\u2212", "-");
  if (!NUMBER.test(trimmed) || AMBIGUOUS.test(trimmed)) return undefined;
  const value = Number(trimmed.replace(",", "."));
  return Number.isFinite(value) ? value : undefined;
}

/** Text that could be a number with grouped thousands, or one with a decimal comma. */
export const isAmbiguousNumber = (text: string) => AMBIGUOUS.test(text.trim());

/** Text without a digit is how the trade writes a missing value: "DNS", "inj", a dash. */
export const isMissingText = (text: string) => !/\p{Nd}/u.test(text);

/** Text that can head a column: anything but a number, or a number followed only by a unit. */
export function isHeadingText(text: string): boolean {
  const trimmed = text.trim();
  return (
    numberInText(trimmed) === undefined &&
    !isAmbiguousNumber(trimmed) &&
    !NUMBER_WITH_UNIT.test(trimmed)
  );
}

/** The text as a message shows it: quoted, and cut where it runs long. */
export const quoted = (text: string) => `"${text.length > 40 ? `${text.slice(0, 39)}…` : text}"`;
