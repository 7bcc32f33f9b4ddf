/** How well lifters call the reps they have left. */
export { callError } from "./callError";
export { agreement, meanMiss, reserveCheck } from "./reserveCheck";
export type { ReserveCheck } from "./reserveCheck";
export { squadReserveCheck } from "./squadReserveCheck";
export { spreadComponents } from "./spreadComponents";
export type { SpreadComponents } from "./spreadComponents";
