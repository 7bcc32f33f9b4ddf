export { volumeLoad } from "./volumeLoad";
export { closeSets } from "./closeSets";
export { muscleSets } from "./muscleSets";
export { logSummary } from "./logSummary";
export { sessionLoad } from "./sessionLoad";
export { weekMonotony } from "./weekMonotony";
export { weekStrain } from "./weekStrain";
