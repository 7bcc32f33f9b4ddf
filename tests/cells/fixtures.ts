import { CellError, type Content, type Quantity } from "../../src/cells";

/** A quantity that cannot be zero, as load is. */
export const load: Quantity = {
  name: "load",
  expected: "a load above 0",
  accepts: (value) => value > 0,
  zeroIsBlank: true,
};

/** A quantity that cannot be zero and cannot be a date, as reps are. */
export const reps: Quantity = {
  name: "reps",
  expected: "a number of reps above 0",
  accepts: (value) => value > 0,
  zeroIsBlank: true,
  neverADate: true,
};

/** A quantity whose zero is a value, as reserve is. */
export const reserve: Quantity = {
  name: "reserve",
  expected: "reps in reserve, 0 or more",
  accepts: (value) => value >= 0,
  zeroIsBlank: false,
  neverADate: true,
};

/** Any number, zero too, as a test's change is. */
export const change: Quantity = {
  name: "change",
  expected: "a number",
  accepts: () => true,
  zeroIsBlank: false,
};

/** How each host passes a blank cell of a range. */
export const blanks: readonly (readonly [host: string, blank: unknown])[] = [
  ["desktop Excel", 0],
  ["Excel on the web", null],
  ["Sheets", ""],
  ["a data type", { type: "Empty" }],
  ["a data type's basic type", { type: "FormattedNumber", basicType: "Empty" }],
  ["a script", undefined],
  ["blanks typed into the cell", "  "],
];

/** Blanks of every host but desktop Excel, whose 0 only the quantity can take for one. */
export const blanksButZero = blanks.filter(([, blank]) => blank !== 0);

/** A column of cells, as a host passes one. */
export const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);

/** A row of cells, as a host passes one. */
export const row = (...cells: unknown[]): unknown[][] => [cells];

/** The error in a cell as one text: "#VALUE! the 2nd row: ...". */
export const errorText = (content: Content | unknown): string =>
  content instanceof CellError ? `${content.code} ${content.message}` : `no error: ${content}`;

/** The error that a call throws, as one text. */
export function thrownBy(call: () => unknown): string {
  try {
    call();
  } catch (error) {
    if (error instanceof CellError) return errorText(error);
    throw error;
  }
  return "nothing was thrown";
}
