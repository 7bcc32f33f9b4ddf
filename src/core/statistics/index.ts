/** The statistics that the rest stands on, as far as they serve by themselves. */
export { correlation, mean, standardDeviation, variance } from "./moments";
export { welchTest } from "./welch";
export type { WelchTest } from "./welch";
export { meanTest } from "./meanTest";
export type { MeanTest } from "./meanTest";
export type { EstimateTest } from "./estimateTest";
export { holm } from "./holm";
export { wilsonInterval } from "./wilson";
export type { Share } from "./wilson";
export { fisherExactP } from "./fisherExact";
export { hedgesCorrection } from "./gamma";
export { normalCdf, normalQuantile } from "./normal";
export { studentCdf, studentQuantile } from "./student";
export { chiSquareCdf, chiSquareQuantile } from "./chiSquare";
export { fCdf, fQuantile } from "./fisherF";
export { noncentralTCdf } from "./noncentralT";
