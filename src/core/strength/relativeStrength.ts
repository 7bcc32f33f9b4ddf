/**
 * Strength relative to body mass, load / body mass ^ exponent. With exponent 1 light athletes look strong; 2/3,
 * the ratio of muscle's cross-section to body volume, takes size out (Jaric 2002, Sports Med 32:615-631).
 *
 * @param load - The load or maximum, in kilograms or pounds.
 * @param bodyMass - The lifter's mass in the same unit, above 0.
 * @param exponent - How strength grows with mass; 2/3 is usual, 1 is plain division.
 * @returns The load over the mass to that power.
 */
export function relativeStrength(load: number, bodyMass: number, exponent: number): number {
  return load / bodyMass ** exponent;
}
