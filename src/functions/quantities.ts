import type { Quantity } from "../cells";

/** What the numbers in this trade may be. A name is the argument's, as the function's help spells it. */

/** A load in the sheet's own unit, kilograms or pounds. */
export const load = (name = "load") => above0(name, "a load above 0");

/** Reps done in a set. */
export const reps = (name = "reps"): Quantity => ({
  ...above0(name, "a number of reps above 0"),
  neverADate: true,
});

/** Reps in reserve: how many more could have been done. Zero is a value. */
export const reserve = (name = "reserve"): Quantity => ({
  ...atLeast0(name, "reps in reserve, 0 or more"),
  neverADate: true,
});

/** The number of sets that a row stands for. */
export const sets = (name = "sets"): Quantity => ({
  ...above0(name, "a number of sets above 0"),
  neverADate: true,
});

/** The step a load is rounded to; 0 is no rounding. */
export const increment = (name = "increment") =>
  atLeast0(name, "the smallest step of the load, or 0 for none");

/** A share between 0 and 1, such as a confidence of 0.95; 0 stands for the usual one. */
export const confidence = (name = "confidence"): Quantity => ({
  name,
  expected: `a fraction between 0 and 1, such as ${EXAMPLES[name] ?? "0.95"}`,
  accepts: (value) => value > 0 && value < 1,
  zeroIsBlank: true,
});

/** What nobody asked otherwise for. */
export const USUAL_CONFIDENCE = 0.95;
export const USUAL_ALPHA = 0.05;
export const USUAL_POWER = 0.8;

const EXAMPLES: Readonly<Record<string, string>> = { alpha: "0.05", power: "0.8" };

/** Degrees of freedom; 0 or blank where there are none to give. */
export const degreesOfFreedom = (name = "df") => above0(name, "degrees of freedom above 0");

/** A count of weeks, from 1 on. */
export const weeks = (name = "weeks") => whole(name, "a whole number of weeks, 1 to 520", 520);

/** A number above 0; zero is a blank. */
export const above0 = (name: string, expected = "a number above 0"): Quantity => ({
  name,
  expected,
  accepts: (value) => value > 0,
  zeroIsBlank: true,
});

/** A number of 0 or more; zero is a value. */
export const atLeast0 = (name: string, expected = "a number of 0 or more"): Quantity => ({
  name,
  expected,
  accepts: (value) => value >= 0,
  zeroIsBlank: false,
});

/** Any number; zero is a value. */
export const anyNumber = (name: string, expected = "a number"): Quantity => ({
  name,
  expected,
  accepts: () => true,
  zeroIsBlank: false,
});

/** How far a lifter's own curve may lie from an equation; zero is a value, a curve known exactly. */
export const curveSd = (): Quantity => ({
  ...atLeast0("curveSd", "a fraction from 0 to 1, such as 0.25"),
  accepts: (value) => value >= 0 && value <= 1,
});

/** How well a maximum is known; zero is a blank. */
export const maxSd = (): Quantity => ({
  ...above0("maxSd", "a fraction above 0 and below 1, such as 0.03"),
  accepts: (value) => value > 0 && value < 1,
});

/** A correlation; zero is a value. */
export const correlation = (name = "correlation"): Quantity => ({
  ...anyNumber(name, "a correlation from −1 to 1"),
  accepts: (value) => value >= -1 && value <= 1,
});

/** A correlation of things that go together, if at all; zero is a value. */
export const positiveCorrelation = (name = "correlation"): Quantity => ({
  ...anyNumber(name, "a correlation from 0 to 1"),
  accepts: (value) => value >= 0 && value <= 1,
});

/** A count of athletes that may be none. */
export const count = (name: string): Quantity => ({
  ...anyNumber(name, "a whole number, 0 or more"),
  accepts: (value) => Number.isInteger(value) && value >= 0,
});

/** The size of a group, from `least` on; zero is a blank. */
export const groupSize = (name: string, least = 2): Quantity => ({
  name,
  expected: `a whole number of athletes, from ${least}`,
  accepts: (value) => Number.isInteger(value) && value >= least,
  zeroIsBlank: true,
});

/** A standard deviation or a standard error; zero is a blank. */
export const spread = (name: string) => above0(name, "a spread above 0");

/** A test score; zero is a blank. */
export const score = (name: string, expected = "a test score"): Quantity => ({
  ...anyNumber(name, expected),
  zeroIsBlank: true,
});

/** The smallest change that matters; zero is a value. */
export const smallest = (name = "smallest") => atLeast0(name, "a change of 0 or more");

/** A whole number from 1 to `most`; zero is a blank. */
export const whole = (name: string, expected: string, most: number): Quantity => ({
  name,
  expected,
  accepts: (value) => Number.isInteger(value) && value >= 1 && value <= most,
  zeroIsBlank: true,
});

/** What random draws start from, a whole number of any sign; zero is a blank. */
export const seed = (name = "seed"): Quantity => ({
  name,
  expected: "a whole number of your own",
  accepts: Number.isSafeInteger,
  zeroIsBlank: true,
});
