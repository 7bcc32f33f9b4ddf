export { studyDiff } from "./studyDiff";
export { studyChangeDiff } from "./studyChangeDiff";
export { sdChange } from "./sdChange";
export { sdFromCi } from "./sdFromCi";
export { seFromCi } from "./seFromCi";
export type { PoolMethodChoice, IntervalChoice } from "./choices";
export { poolStudies } from "./poolStudies";
export { doseResponse } from "./doseResponse";
export { worthChanging } from "./worthChanging";
