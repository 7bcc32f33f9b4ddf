export { reserveTaper } from "./reserveTaper";
export type { PlanPart } from "./planPart";
export { blockPlan } from "./blockPlan";
export { planWeek } from "./planWeek";
export { planCheck } from "./planCheck";
