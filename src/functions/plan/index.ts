export { reserveTaper } from "./reserveTaper";
export type { PlanColumn } from "./planColumn";
export { blockPlan } from "./blockPlan";
export { planWeek } from "./planWeek";
export { planCheck } from "./planCheck";
