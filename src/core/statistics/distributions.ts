/** The distributions everything else draws on, in one place to import from. */
export { chiSquareCdf, chiSquareQuantile, chiSquareUpperTail } from "./chiSquare";
export { fCdf, fQuantile, fUpperTail } from "./fisherF";
export { hedgesCorrection, logGamma } from "./gamma";
export { hypergeometric } from "./hypergeometric";
export { criticalValue, requireProbability, twoSidedP, upperP } from "./inference";
export { noncentralTCdf, noncentralTOutside } from "./noncentralT";
export { normalCdf, normalDensity, normalQuantile } from "./normal";
export { studentCdf, studentQuantile } from "./student";
