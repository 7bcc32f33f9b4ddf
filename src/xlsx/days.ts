import { DAY_ZERO, serialOfTime } from "../cells/day";

/** A workbook that counts its days from 1904 counts so many fewer than one that does from 1900. */
export const DAYS_FROM_1900_TO_1904 = 1462;

const ISO_DATE = /^\d{4}-\d\d-\d\d(?:T\d\d:\d\d(?::\d\d(?:\.\d+)?)?)?(?:Z|[+-]\d\d:\d\d)?$/;
const ISO_TIME = /^T?(\d\d:\d\d(?::\d\d(?:\.\d+)?)?)Z?$/;

/** A date, a time or both as they are written out, "2026-01-05T09:30:00", as the day's number. */
export function dayOfIso(written: string, from1904: boolean): number | undefined {
  const time = ISO_TIME.exec(written)?.[1];
  if (time !== undefined) return serialOf(`${DAY_ZERO}T${time}Z`);
  if (!ISO_DATE.test(written)) return undefined;
  const zoned = /T.*(?:Z|[+-]\d\d:\d\d)$/.test(written) || !written.includes("T");
  const day = serialOf(zoned ? written : `${written}Z`);
  if (day === undefined) return undefined;
  if (from1904) return day - DAYS_FROM_1900_TO_1904;
  // Day 1 is 1 January 1900: before that year's 29 February, which only spreadsheets have, the count is one less.
  return day >= 1 && day < 61 ? day - 1 : day;
}

function serialOf(written: string): number | undefined {
  const milliseconds = Date.parse(written);
  return Number.isNaN(milliseconds) ? undefined : serialOfTime(milliseconds);
}
