import { timeOfSerial } from "../../cells";
import { fixed } from "../../cells/shown";

/** Text in a picture: how wide it is, where it breaks, and how numbers are written. */

export { dayText, digitsFor, grouped } from "../../cells/shown";

/**
 * About how many pixels a line takes. A picture is laid out before it is on a page, so nothing can be
 * measured; the widths are those of common screen fonts, a little on the wide side.
 */
export function textWidth(text: string, size: number, bold = false): number {
  const ems = [...text].reduce((sum, letter) => sum + widthOf(letter), 0);
  return ems * size * (bold ? 1.07 : 1);
}

function widthOf(letter: string): number {
  if (/[ijlI.,:;'|!()[\] ]/.test(letter)) return 0.32;
  if (/[mwMW%+−]/.test(letter)) return 0.86;
  if (/[A-Z0-9]/.test(letter)) return 0.66;
  return 0.6;
}

/** Breaks a text into lines of at most so many pixels, between words. */
export function wrap(text: string, width: number, size: number, bold = false): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth(longer, size, bold) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}

/** Cuts a text that is too wide, and shows that it was cut. A short last word stays: it may be the year. */
export function cut(text: string, width: number, size: number): string {
  if (textWidth(text, size) <= width) return text;
  const end = /\s\S{1,6}$/.exec(text)?.[0] ?? "";
  const letters = [...text.slice(0, text.length - end.length)];
  while (letters.length > 1 && textWidth(`${letters.join("")}…${end}`, size) > width) letters.pop();
  return `${letters.join("").replace(/[\s,]+$/, "")}…${end}`;
}

/** A number with so many decimals, and the minus sign of print. */
export const number = (value: number, digits: number): string =>
  fixed(value, digits).replace("-", "−");

/** A change or a difference, its sign always shown. */
export const signed = (value: number, digits: number): string => {
  const text = number(value, digits);
  return Number(fixed(value, digits)) > 0 ? `+${text}` : text;
};

/** A quantity with its unit, "load, kg"; where nobody told it, the unit is the sheet's. */
export const named = (quantity: string, units: string | undefined) =>
  `${quantity}, ${units ?? "unit of the sheet"}`;

/** A number with its unit behind it, "140.2 kg". */
export const withUnit = (text: string, units: string | undefined) =>
  units === undefined ? text : `${text} ${units}`;

/** The day that a sheet's serial number stands for. */
export const toDate = (serial: number) => new Date(timeOfSerial(serial));
