/** What is planned, week by week, and how what was done compares with it. */
export { MOST_WEEKS, reserveInWeek, reserveTaper } from "./taper";
export type { Taper } from "./taper";
export { blockPlan, planWeek } from "./blockPlan";
export type { Block, PlanOptions, PlanRow } from "./blockPlan";
export { planCheck } from "./planCheck";
export type { CheckedSet, PlanCheck } from "./planCheck";
