/*
 * A spreadsheet counts days. It has a 29 February 1900 that never was, so that from March 1900 on its day 0 seems to
 * be 30 December 1899.
 */
export const DAY_ZERO = "1899-12-30";
const MILLISECONDS_A_DAY = 86_400_000;
const START = Date.parse(DAY_ZERO);

/** The serial number of a moment, which is counted as `Date` counts it and stands for the time on a wall clock. */
export const serialOfTime = (milliseconds: number): number =>
  (milliseconds - START) / MILLISECONDS_A_DAY;

/** The moment that a serial number stands for, as `Date` counts it. */
export const timeOfSerial = (serial: number): number => START + serial * MILLISECONDS_A_DAY;
