import type { BaseFunction } from "@univerjs/engine-formula";
import { serialOfTime, timeOfSerial } from "../../../cells";
import { asNumber, wrongNumber, wrongValue } from "./numbers";
import { cellByCell } from "./plain";

/** Days are counted from the last of 1899, and a clock from midnight in parts of a day. */
export const dayFunctions = (): readonly BaseFunction[] => [
  cellByCell("EDATE", [2, 2], (start, months) => {
    const [day, count] = [asNumber(start), asNumber(months)];
    if (day === undefined || count === undefined) return wrongValue;
    if (day < 0) return wrongNumber;
    return monthsLater(Math.floor(day), Math.trunc(count)) ?? wrongNumber;
  }),
  clock("HOUR", (seconds) => Math.floor(seconds / 3600)),
  clock("MINUTE", (seconds) => Math.floor(seconds / 60) % 60),
  clock("SECOND", (seconds) => seconds % 60),
];

const SECONDS_A_DAY = 86_400;

/** Parts of a day are no round numbers, so 6:30 may lie a hair before: the clock is read to the millisecond. */
function clock(name: string, read: (seconds: number) => number): BaseFunction {
  return cellByCell(name, [1, 1], (time) => {
    const days = asNumber(time);
    if (days === undefined) return wrongValue;
    if (days < 0) return wrongNumber;
    const milliseconds = Math.round((days - Math.floor(days)) * SECONDS_A_DAY * 1000);
    return read(Math.floor(milliseconds / 1000) % SECONDS_A_DAY);
  });
}

/** 1 March 1900, from which on the count of days is the calendar's. */
const FIRST_RIGHT = 61;

/** The same day of a later month, or that month's last where it is shorter. */
function monthsLater(day: number, months: number): number | undefined {
  const shift = day < FIRST_RIGHT ? 1 : 0;
  const start = new Date(timeOfSerial(day + shift));
  const [year, month] = [start.getUTCFullYear(), start.getUTCMonth() + months];
  const last = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
  const end = Date.UTC(year, month, Math.min(start.getUTCDate(), last));
  const result = Math.round(serialOfTime(end));
  return result < 1 ? undefined : result < FIRST_RIGHT ? result - 1 : result;
}
