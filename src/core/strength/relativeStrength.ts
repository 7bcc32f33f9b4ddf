/**
 * Strength relative to body mass, load / body mass ^ exponent. With exponent 1 light athletes look strong; 2/3,
 * the ratio of muscle's cross-section to body volume, takes size out (Jaric 2002, Sports Med 32:615-631).
 */
export function relativeStrength(load: number, bodyMass: number, exponent: number): number {
  return load / bodyMass ** exponent;
}
