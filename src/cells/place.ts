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
