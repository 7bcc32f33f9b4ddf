/** What studies say: from a paper's table to whether the next block should change. */
export { studyDifference } from "./studyDifference";
export type { GroupSummary, StudyDifference } from "./studyDifference";
export { studyChangeDifference } from "./studyChangeDifference";
export type { ChangeSummary, StudyChangeDifference } from "./studyChangeDifference";
export { sdOfChange } from "./sdOfChange";
export { sdFromInterval } from "./sdFromInterval";
export { seFromInterval } from "./seFromInterval";
export { onePerStudy } from "./onePerStudy";
export type { EffectColumns } from "./onePerStudy";
export { poolStudies } from "./poolStudies";
export type { PooledStudies } from "./poolStudies";
export type { PooledMean, PoolMethod, PoolOptions } from "./pooledMean";
export type { PoolInterval } from "./scatterFactor";
export type { Heterogeneity } from "./heterogeneity";
export { leaveOneOut } from "./leaveOneOut";
export type { PoolWithout } from "./leaveOneOut";
export { doseResponse, effectsAtDoses } from "./doseResponse";
export type { DoseEstimate, DoseResponse, DoseResponseOptions } from "./doseResponse";
export { USUAL_SCALE, worthChanging } from "./worthChanging";
export type {
  EarlierStudies,
  NewStudy,
  Squad,
  WorthChanging,
  WorthChangingOptions,
  WorthChangingReading,
} from "./worthChanging";
