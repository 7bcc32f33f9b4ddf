const CODES = new Set([
  "#VALUE!",
  "#N/A",
  "#REF!",
  "#NAME?",
  "#DIV/0!",
  "#NUM!",
  "#NULL!",
  "#SPILL!",
  "#CALC!",
]);

/** Whether a cell's value is the code of an error. */
export const isErrorCode = (value: unknown): value is string =>
  typeof value === "string" && CODES.has(value);
