/**
 * Two numbers closer than this, relative to the larger, are the same number to us. Spreadsheets hold
 * decimals in binary, so that 3 × 0.1 is not 0.3; whether a change reached its threshold must not depend
 * on that.
 */
const RELATIVE = 1e-9;

/** Whether two numbers are the same to a relative 1e-9. */
export function sameTo(a: number, b: number): boolean {
  return Math.abs(a - b) <= RELATIVE * Math.max(Math.abs(a), Math.abs(b));
}

/** Whether `a` is above `b` by more than binary dust. */
export function above(a: number, b: number): boolean {
  return a > b && !sameTo(a, b);
}

/** Whether `a` is below `b` by more than binary dust. */
export function below(a: number, b: number): boolean {
  return a < b && !sameTo(a, b);
}

/** Whether `a` is `b` or less, dust aside. */
export function atMost(a: number, b: number): boolean {
  return !above(a, b);
}

/** Whether `a` is `b` or more, dust aside. */
export function atLeast(a: number, b: number): boolean {
  return !below(a, b);
}

/** The number without binary dust: the nearest one that 15 digits can write (1.2000000000000002 is 1.2). */
export function withoutDust(value: number): number {
  // Writing and reading back is slow, and a short number in eighths (82.5) has no dust to lose.
  if (Math.abs(value) < 1e9 && Number.isInteger(value * 8)) return value;
  const rounded = roundedAsInteger(value) ?? Number(value.toPrecision(15));
  // The largest numbers that there are would round up to infinity.
  return Number.isFinite(rounded) ? rounded : value;
}

/** The powers of ten that binary holds exactly. */
const POWERS_OF_TEN = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

/**
 * The same by way of a whole number of 15 digits, which divides back exactly, at a tenth of the time. Nothing where the
 * power of ten is not exact, or where the number lies so near a tie that the product's own rounding could decide it.
 */
function roundedAsInteger(value: number): number | undefined {
  const power = POWERS_OF_TEN[14 - Math.floor(Math.log10(Math.abs(value)))];
  if (power === undefined) return undefined;
  const digits = value * power;
  const whole = Math.round(digits);
  // Near a power of ten the logarithm may be one off.
  const has15Digits = Math.abs(digits) >= 1e14 && Math.abs(digits) < 1e15;
  const isSure = has15Digits && Math.abs(digits - whole) < 0.4;
  return isSure ? whole / power : undefined;
}

/**
 * `a − b` without binary dust: 10.3 − 5.3 is 5. Five equal gains must come out equal, or their standard
 * deviation is a meaningless 1e-16 and their t a meaningless 1e16.
 */
export function difference(a: number, b: number): number {
  const scale = Math.max(Math.abs(a), Math.abs(b));
  if (scale === 0) return 0;
  const decimals = 14 - Math.ceil(Math.log10(scale));
  return decimals > 0 && decimals <= 100 ? Number((a - b).toFixed(decimals)) : a - b;
}
