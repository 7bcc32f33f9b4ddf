import { serialOfTime } from "../../cells";

/** Whether a cell holds a date; one from another realm is no instance of our Date. */
export const isDate = (cell: unknown): cell is Date =>
  Object.prototype.toString.call(cell) === "[object Date]";

/**
 * Gives the serial number that a date has in its sheet.
 *
 * Sheets hands a date over as a moment: midnight where the spreadsheet is. The script's own clock may stand in
 * another zone (File, Settings of the one; the project settings of the other), and read there the same moment
 * can be the evening of the day before. So the moment is read in the spreadsheet's zone.
 */
export function serialNumberIn(timeZone: string): (date: Date) => number {
  const clock = new Intl.DateTimeFormat("en-US", {
    timeZone,
    calendar: "gregory",
    numberingSystem: "latn",
    hourCycle: "h23",
    year: "numeric",
    month: "numeric",
    day: "numeric",
    hour: "numeric",
    minute: "numeric",
    second: "numeric",
  });
  return (date) => {
    const shown = new Map(
      clock.formatToParts(date).map(({ type, value }) => [type, Number(value)]),
    );
    const at = (part: Intl.DateTimeFormatPartTypes) => shown.get(part)!;
    const asIfUniversal = Date.UTC(
      at("year"),
      at("month") - 1,
      at("day"),
      at("hour"),
      at("minute"),
      at("second"),
    );
    return serialOfTime(asIfUniversal);
  };
}
