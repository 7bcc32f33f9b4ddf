import { timeOfSerial } from "./day";

/*
 * How a number is written: in a cell by the cell's format, and everywhere else with the digits that a cell would show.
 * A count, or a load as it is on the bar, is written as it is; what is estimated, by its size.
 */

/** A number with so many decimals, a half rounded away from zero as a cell rounds it. */
export function fixed(value: number, digits: number): string {
  const scale = 10 ** digits;
  const rounded = Math.round(Number((Math.abs(value) * scale).toPrecision(15))) / scale;
  return (value < 0 && rounded > 0 ? "-" : "") + rounded.toFixed(digits);
}

/** How many decimals tell estimates of this size apart. */
export function digitsFor(values: readonly number[]): number {
  const largest = Math.max(...values.map(Math.abs));
  if (largest >= 1000) return 0;
  return largest >= 5 ? 1 : 2;
}

/** A whole number, written already, with a comma between its thousands. */
export const grouped = (whole: string): string => whole.replace(/\B(?=(\d{3})+$)/g, ",");

/** A number as a cell of ordinary width shows it that has no format. */
export const ordinary = (value: number): string => String(Number(value.toPrecision(6)));

/** How a date is shown, "5 Jan 2026": nobody takes its month for its day. */
export const DATE_FORMAT = "d mmm yyyy";

const MONTHS = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ");

/** The day that a sheet's serial number stands for, as a cell and a sentence name it. */
export function dayText(serial: number): string {
  const date = new Date(timeOfSerial(serial));
  return `${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]} ${date.getUTCFullYear()}`;
}

/**
 * A number as a cell shows it in a format. Those of our sheets are known (decimals, thousands, percent, signs, dates,
 * conditions); in any other the number is written as in a cell without one.
 */
export function shownIn(value: number, format = "General"): string {
  if (format === DATE_FORMAT) return dayText(value);
  const section = sectionFor(value, format.split(";"));
  const parts = section && /^((?:"[^"]*"|[+-])?)((?:#,##)?0(?:\.0+)?)?(%?)$/.exec(section.pattern);
  if (!parts) return ordinary(value);
  const [, before = "", places, percent = ""] = parts;
  const literal = before.replaceAll('"', "");
  if (places === undefined) return literal === "" ? ordinary(value) : literal;
  const decimals = /\.(0+)/.exec(places)?.[1]?.length ?? 0;
  const size = fixed(section.sized * (percent ? 100 : 1), decimals);
  const sign = size.startsWith("-") ? "-" : "";
  const [whole = "", ...rest] = size.slice(sign.length).split(".");
  const digits = [places.startsWith("#") ? grouped(whole) : whole, ...rest].join(".");
  return sign + literal + digits + percent;
}

interface Section {
  readonly pattern: string;
  /** The number that it shows: without its sign where the section brings one. */
  readonly sized: number;
}

/** The section of a format that a number falls into: by the conditions where there are any, else by its sign. */
function sectionFor(value: number, sections: readonly string[]): Section | undefined {
  const [positive = "", negative, zero] = sections;
  if (positive.startsWith("[")) {
    for (const section of sections) {
      const [, sign, bound, pattern = ""] =
        /^\[(<|<=|>|>=|=)([\d.]+)\](.*)$/.exec(section) ?? ([, , , section] as string[]);
      if (sign === undefined || holds(value, sign, Number(bound))) return { pattern, sized: value };
    }
    return undefined;
  }
  if (value < 0 && negative !== undefined) return { pattern: negative, sized: -value };
  if (value === 0 && zero !== undefined) return { pattern: zero, sized: value };
  return { pattern: positive, sized: value };
}

function holds(value: number, sign: string, bound: number): boolean {
  switch (sign) {
    case "<":
      return value < bound;
    case "<=":
      return value <= bound;
    case ">":
      return value > bound;
    case ">=":
      return value >= bound;
    default:
      return value === bound;
  }
}
