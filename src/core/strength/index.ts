/** How strong: what a set says of the maximum, and what a log says of its rise. */
export { equations, fractionAt, ownCurve, repsToFailureAt } from "./equations";
export type { Equation, EquationName } from "./equations";
export { e1rm, e1rmBand, e1rmBandOfAll } from "./oneRepMax";
export { fitCurve } from "./fitCurve";
export type { CurveFit, CurveSet } from "./fitCurve";
export { relativeStrength } from "./relativeStrength";
export { repsAtLoad } from "./repsAtLoad";
export { strengthTrend } from "./strengthTrend";
export type { StrengthTrend, TrendDay, TrendSummary } from "./strengthTrend";
export type { LoggedSet, TrendOptions } from "./trend/usedSets";
export { squadTrend } from "./squadTrend";
export type { SquadTrendRow } from "./squadTrend";
export { riseCompare } from "./riseCompare";
export type { RiseComparison } from "./riseCompare";
