/**
 * The repetitions-in-reserve scale of effort (Zourdos et al. 2016, J Strength Cond Res 30:267-275): RPE 10 is a
 * set with nothing left, and every rep in reserve is one point less. The printed scale puts numbers to RPE 5 to
 * 10 only; here it is a line through them, so that 9.5 is half a rep where the print says "none, perhaps more
 * load".
 */
const TOP = 10;

/** The lowest RPE that the scale gives a number of reps to. */
export const LOWEST_RPE = 5;

/** Reps in reserve at this RPE. */
export const rpeToReserve = (rpe: number) => TOP - rpe;

/** RPE with this many reps in reserve. */
export const reserveToRpe = (reserve: number) => TOP - reserve;
