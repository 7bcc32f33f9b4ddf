export { e1rm } from "./e1rm";
export { e1rmBand } from "./e1rmBand";
export { percent1rm } from "./percent1rm";
export { repsAt } from "./repsAt";
export { fitCurve } from "./fitCurve";
export { relativeStrength } from "./relativeStrength";
export { strengthTrend } from "./strengthTrend";
