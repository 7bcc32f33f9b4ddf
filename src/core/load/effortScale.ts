/**
 * The repetitions-in-reserve scale of effort (Zourdos et al. 2016, J Strength Cond Res 30:267-275): RPE 10 is a
 * set with nothing left, and every rep in reserve is one point less. The printed scale puts numbers to RPE 5 to
 * 10 only; here it is a line through them, so that 9.5 is half a rep where the print says "none, perhaps more
 * load".
 */
const TOP = 10;

/** The lowest RPE that the scale gives a number of reps to. */
export const LOWEST_RPE = 5;

/**
 * Reps in reserve at this RPE.
 *
 * Source: Zourdos et al. 2016, J Strength Cond Res 30:267-275.
 *
 * @param rpe - The RPE, from 5 to 10.
 * @returns Reps in reserve, 10 minus the RPE.
 */
export const rpeToReserve = (rpe: number) => TOP - rpe;

/**
 * RPE with this many reps in reserve.
 *
 * Source: Zourdos et al. 2016, J Strength Cond Res 30:267-275.
 *
 * @param reserve - Reps in reserve, 0 or more.
 * @returns The RPE, 10 minus the reserve.
 */
export const reserveToRpe = (reserve: number) => TOP - reserve;
