/** What was done: sums over a training log. */
export { summariseLog } from "./logSummary";
export type { LogSummary, SummarisedSets, SummaryOptions } from "./logSummary";
export { volumeLoads } from "./volumeLoad";
export type { LoadedSets } from "./volumeLoad";
export { closeSets } from "./closeSets";
export { muscleSets } from "./muscleSets";
export type { ExercisedSets } from "./muscleSets";
export { sessionLoad } from "./sessionLoad";
export { weekMonotony, weekStrain } from "./weekLoad";
export type { GroupOf, JudgedSets, LogColumn } from "./columns";
