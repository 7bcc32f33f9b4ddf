/** The families of cell functions, in the coach's order. The index of each names its functions, in that order too. */
export * from "./strength";
export * from "./load";
export * from "./plan";
export * from "./log";
export * from "./reserve";
export * from "./testing";
export * from "./studies";
export * from "./about";
