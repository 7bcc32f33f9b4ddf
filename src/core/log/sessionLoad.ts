import { expectPositive } from "../checks";

/**
 * Session load: how hard the whole session felt, as an RPE, times how many minutes it took.
 *
 * Source: Foster et al. 2001, J Strength Cond Res 15:109-115.
 *
 * @param rpe - How hard the whole session felt, above 0.
 * @param minutes - How long it took, above 0.
 * @returns The load in arbitrary units.
 * @throws BadInput where either is not above 0.
 */
export function sessionLoad(rpe: number, minutes: number): number {
  expectPositive("rpe", rpe);
  expectPositive("minutes", minutes);
  return rpe * minutes;
}
