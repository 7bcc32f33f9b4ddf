/*
 * A spreadsheet counts days. Day 1 is 1 January 1900, and the count has a 29 February 1900 that never
 * was (ECMA-376 part 1, 18.17.4.1), so that from March 1900 on day 0 seems to be 30 December 1899.
 */

/** Day 0 of the dates since March 1900, in milliseconds as `Date` counts them. */
export const dayZero = Date.UTC(1899, 11, 30);

export const millisecondsOfDay = 86_400_000;

/** A workbook that counts its days from 1904 counts so many fewer than one that does from 1900. */
export const daysFrom1900To1904 = 1462;

const isoDate = /^\d{4}-\d\d-\d\d(?:T\d\d:\d\d(?::\d\d(?:\.\d+)?)?)?(?:Z|[+-]\d\d:\d\d)?$/;
const isoTime = /^T?(\d\d:\d\d(?::\d\d(?:\.\d+)?)?)Z?$/;

/** A date, a time or both as they are written out, "2026-01-05T09:30:00", as the day's number. */
export function dayOfIso(written: string, from1904: boolean): number | undefined {
  const time = isoTime.exec(written)?.[1];
  if (time !== undefined) return fraction(Date.parse(`1970-01-01T${time}Z`));
  if (!isoDate.test(written)) return undefined;
  const zoned = /T.*(?:Z|[+-]\d\d:\d\d)$/.test(written) || !written.includes("T");
  const days = fraction(Date.parse(zoned ? written : `${written}Z`) - dayZero);
  if (days === undefined) return undefined;
  if (from1904) return days - daysFrom1900To1904;
  return days >= 1 && days < 61 ? days - 1 : days;
}

function fraction(milliseconds: number): number | undefined {
  return Number.isNaN(milliseconds) ? undefined : milliseconds / millisecondsOfDay;
}
