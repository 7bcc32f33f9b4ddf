import type { Grid } from "../../cells";
import { DATE_FORMAT, digitsFor } from "../../cells/shown";

/** How a column of a result looks: what stands above it, and how its numbers are shown. */
export interface Look {
  /** A number format of the file format's; nothing where the sheet's usual one serves. */
  readonly format: string | undefined;
  /** The widest of its texts, in characters. */
  readonly width: number;
}

const SHARE = "0.0%";
/** Of estimates, by how many decimals they need. */
const PLACES = ["#,##0", "0.0", "0.00"];
const CHANCE_OF_ERROR = '[<0.001]"<0.001";0.000';

/** The first day that a number above 0 and this far out is read as: 10 Sep 1981. */
const DAYS = 29_839;

/** How the cells below a label are shown: dates as dates, shares in percent, a p-value as p-values are printed. */
export function lookOf(label: string, contents: Grid[number]): Look {
  const numbers = contents.filter((content) => typeof content === "number");
  const format = formatOf(label.toLowerCase(), numbers);
  const texts = contents.map((content) => (typeof content === "string" ? content.length : 0));
  return { format, width: Math.max(format === DATE_FORMAT ? 11 : 7, ...texts) };
}

function formatOf(label: string, numbers: readonly number[]): string | undefined {
  if (numbers.length === 0) return undefined;
  if (/\bdate\b/.test(label) && numbers.every((number) => number > DAYS)) return DATE_FORMAT;
  if (/\bp\b/.test(label)) return CHANCE_OF_ERROR;
  if (/\b(?:percent|share|chance)\b/.test(label)) return SHARE;
  if (numbers.every((number) => Number.isInteger(number * 4))) return undefined;
  return PLACES[digitsFor(numbers)];
}
