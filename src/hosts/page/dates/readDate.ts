import * as numfmt from "numfmt";
import { DATE_FORMAT } from "../../../cells/shown";

/** A date that was read: its serial number, and the format to show it in. */
export interface ReadDate {
  readonly v: number;
  readonly z: string;
}

type Part = "day" | "month" | "year";

/**
 * Reads what somebody typed as a date, day and month in the order that their language writes them:
 * `5/1/2026` is the fifth of January in English (UK) and the first of May in English (US). Where that
 * order gives no date, the other one may: `26/1/2026` is a date to both.
 *
 * Two numbers with a dash between them are no date. In a training log `8-10` is a range of reps.
 */
export function dateReader(
  language: string,
  today = new Date(),
): (text: string) => ReadDate | null {
  const order = partsIn(language);
  return (text) => {
    // The spreadsheet asks this of every text it draws, and most of them are words.
    if (!/\d/.test(text)) return null;
    const trimmed = text.trim();
    if (/\p{L}/u.test(trimmed.replace(TIME_OF_DAY, ""))) return readNamed(trimmed, language);
    return readNumbers(trimmed, order, today.getFullYear());
  };
}

/** The order in which a language writes a date's parts. */
function partsIn(language: string): Part[] {
  const shown = new Intl.DateTimeFormat(language, { dateStyle: "short", calendar: "gregory" });
  return shown
    .formatToParts(new Date(2033, 10, 22))
    .map(({ type }) => type)
    .filter((type): type is Part => type === "day" || type === "month" || type === "year");
}

const TIME_OF_DAY = /[\sT,]+\d{1,2}(?::\d{1,2}){1,2}(?:\s*[ap]m?)?$/i;

const NUMBERS = /^(\d{1,4})\s*([-./])\s*(\d{1,2})(?:\s*\2\s*(\d{4}|\d{1,2})?)?$/;

function readNumbers(text: string, order: readonly Part[], thisYear: number): ReadDate | null {
  const [time = ""] = TIME_OF_DAY.exec(text) ?? [];
  const [, first, separator, second, third] =
    NUMBERS.exec(text.slice(0, text.length - time.length)) ?? [];
  if (first === undefined || separator === undefined || second === undefined) return null;
  const read = third
    ? inOrder([first, second, third], first.length > 2 ? ["year", "month", "day"] : order)
    : withoutYear(text, first, separator, second, order, thisYear);
  return read && dated(read.year, read.month, read.day, time);
}

function inOrder(texts: readonly string[], order: readonly Part[]) {
  const at = (part: Part) => texts[order.indexOf(part)] ?? "";
  const year = at("year");
  if (year.length !== 2 && year.length !== 4) return null;
  // Two digits of a year are those of 1930 to 2029, as in other spreadsheets.
  const century = year.length === 4 ? 0 : Number(year) < 30 ? 2000 : 1900;
  return { year: century + Number(year), month: Number(at("month")), day: Number(at("day")) };
}

/** `5/1` and, where dots stand in dates, `5.1.` are days of this year; `5.1` is a number. */
function withoutYear(
  text: string,
  first: string,
  separator: string,
  second: string,
  order: readonly Part[],
  year: number,
) {
  const isDate = separator === "/" || (separator === "." && text.endsWith("."));
  if (!isDate || first.length > 2) return null;
  const dayFirst = order.indexOf("day") < order.indexOf("month");
  const [day, month] = dayFirst ? [first, second] : [second, first];
  return { year, month: Number(month), day: Number(day) };
}

function dated(year: number, month: number, day: number, time: string): ReadDate | null {
  if (isDay(year, month, day)) return serialOf(year, month, day, time);
  return isDay(year, day, month) ? serialOf(year, day, month, time) : null;
}

function isDay(year: number, month: number, day: number): boolean {
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}

function serialOf(year: number, month: number, day: number, time: string): ReadDate | null {
  const clock = time ? numfmt.parseTime(time.replace(/^[\sT,]+/, "")) : null;
  const days = numfmt.dateToSerial([year, month, day]);
  if (days === null || year < 1900 || (time !== "" && !clock)) return null;
  return clock
    ? { v: days + Number(clock.v), z: `${DATE_FORMAT} ${clock.z}` }
    : { v: days, z: DATE_FORMAT };
}

/** A date with its month as a word, in the person's own language or in English. */
function readNamed(text: string, language: string): ReadDate | null {
  const read = numfmt.parseDate(text, { locale: language }) ?? numfmt.parseDate(text);
  if (!read || typeof read.v !== "number" || !read.z) return null;
  const time = read.z.replace(/^[^h]*/, "");
  const hasDay = /(?<!d)d{1,2}(?!d)/.test(read.z);
  return { v: read.v, z: hasDay ? `${DATE_FORMAT} ${time}`.trim() : read.z };
}
