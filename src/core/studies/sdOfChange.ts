import { requireCorrelation, requirePositive } from "./inputs";

/**
 * The standard deviation of changes, which many papers leave out, from those before and after and their
 * correlation: √(before² + after² − 2 r before after) (Cochrane Handbook, chapter 6).
 */
export function sdOfChange(sdBefore: number, sdAfter: number, correlation: number): number {
  requirePositive("sdBefore", sdBefore);
  requirePositive("sdAfter", sdAfter);
  requireCorrelation(correlation);
  // The same sum, arranged so that a correlation near 1 costs no digits.
  return Math.sqrt((sdBefore - sdAfter) ** 2 + 2 * (1 - correlation) * sdBefore * sdAfter);
}
