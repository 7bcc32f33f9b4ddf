/**
 * A row as a message names it: "the 19th row". A function knows the range it was given and not where that stands in
 * the sheet, so it counts, and says of which argument.
 */
export const nthRow = (row: number) => `the ${nth(row)} row`;

/** A column of a range, in the same way. */
export const nthColumn = (column: number) => `the ${nth(column)} column`;

/** A number in order: 1st, 2nd, 3rd, 4th, 11th, 22nd. */
function nth(number: number): string {
  const ends = /1[123]$/.test(String(number)) ? 0 : number % 10;
  return `${number}${["th", "st", "nd", "rd"][ends] ?? "th"}`;
}

/**
 * Puts the rows that a message names into other words, for whoever knows where the range stands: `told` gets the row
 * and the argument, if the message says one.
 */
export const tellRows = (
  message: string,
  told: (row: number, name: string | undefined) => string | undefined,
): string =>
  message.replaceAll(
    NTH_ROW,
    (said: string, nth: string, name?: string) => told(Number(nth), name) ?? said,
  );

const NTH_ROW = /\bthe (\d+)(?:st|nd|rd|th) row(?: of (?:the )?(\w+))?/g;
