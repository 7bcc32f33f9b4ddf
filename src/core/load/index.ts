/** How heavy: from a target of reps and reserve to what is on the bar. */
export { MOST_CALLED_RESERVE, nextLoad, roundedLoad, targetLoad } from "./targetLoad";
export { roundToMultiple } from "./round";
export type { Rounding } from "./round";
export { barLoader, plateSets } from "./plates";
export type { BarLoader, Nearest, Plate, PlateSet } from "./plates";
export { COMMON_STEPS, warmUpSets } from "./warmUp";
export type { WarmUpOptions, WarmUpSet, WarmUpStep } from "./warmUp";
export { setChance } from "./setChance";
export type { SetChanceOptions } from "./setChance";
export { LOWEST_RPE, reserveToRpe, rpeToReserve } from "./effortScale";
