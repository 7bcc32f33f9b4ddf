import { requireCorrelation, requirePositive } from "./inputs";

/**
 * The standard deviation of changes, which many papers leave out, from those before and after and their
 * correlation: √(before² + after² − 2 r before after) (Cochrane Handbook, chapter 6).
 *
 * @param sdBefore - The SD before, above 0.
 * @param sdAfter - The SD after, above 0.
 * @param correlation - Of before and after, from −1 to 1.
 * @returns The SD of changes, in the same unit.
 * @throws BadInput where a value is out of its range.
 */
export function sdOfChange(sdBefore: number, sdAfter: number, correlation: number): number {
  requirePositive("sdBefore", sdBefore);
  requirePositive("sdAfter", sdAfter);
  requireCorrelation(correlation);
  // The same sum, arranged so that a correlation near 1 costs no digits.
  return Math.sqrt((sdBefore - sdAfter) ** 2 + 2 * (1 - correlation) * sdBefore * sdAfter);
}
