import { BadInput } from "../problem";
import { criticalValue } from "../statistics/distributions";

/**
 * The spread of a difference between two tests that comes from the test alone: each of the two scores
 * carries the typical error, so their difference carries √2 of it.
 */
export function errorOfChange(typicalError: number): number {
  if (!(typicalError > 0)) {
    throw new BadInput(`typicalError is ${typicalError}; expected above 0`);
  }
  return Math.SQRT2 * typicalError;
}

/**
 * The minimal detectable change: how far two scores of one athlete must lie apart before test error alone
 * is an unlikely explanation. Normal, or Student's t on the degrees of freedom of the typical error where
 * they are given, because an error estimated from few athletes is itself uncertain.
 *
 * Source: Weir 2005, J Strength Cond Res 19:231-240.
 *
 * @param typicalError - The test's typical error, in its unit, above 0.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @param df - Those of the typical error, where they are known.
 * @returns The change in the test's unit.
 * @throws BadInput where `typicalError` is not above 0.
 */
export function minimalDetectableChange(
  typicalError: number,
  confidence: number,
  df?: number,
): number {
  return criticalValue(confidence, df) * errorOfChange(typicalError);
}
