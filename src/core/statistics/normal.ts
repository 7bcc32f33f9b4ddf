import erfc from "@stdlib/math-base-special-erfc";
import erfcinv from "@stdlib/math-base-special-erfcinv";

/**
 * The standard normal distribution: the chance of a value below `z`. Exact far into the lower tail.
 *
 * Source: common knowledge.
 *
 * @param z - A standard normal value.
 * @returns The chance, from 0 to 1.
 */
export function normalCdf(z: number): number {
  return erfc(-z / Math.SQRT2) / 2;
}

/**
 * The z that a standard normal value stays below with chance `p`.
 *
 * Source: common knowledge.
 *
 * @param p - A chance, above 0 and below 1.
 * @returns The value z.
 */
export function normalQuantile(p: number): number {
  return -Math.SQRT2 * erfcinv(2 * p);
}

/** The height of the standard normal curve at `z`. */
export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}
