/**
 * The science without any cells, as `import { e1rm } from "reps-to-spare"` gives it: plain numbers and arrays in, plain
 * objects out. What cannot be right throws `BadInput`; too little data, or no solution, throws `NoAnswer`; a value that
 * does not exist for the data is `{ absent: "why" }`. Nothing is NaN or infinite.
 */
export * from "./strength";
export * from "./load";
export * from "./plan";
export * from "./log";
export * from "./reserve";
export * from "./testing";
export * from "./studies";
export * from "./statistics";
export { BadInput, NoAnswer } from "./problem";
export type { Absent } from "./problem";
