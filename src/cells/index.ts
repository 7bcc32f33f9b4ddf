/** The cell layer: what a cell can hold, how it is read, and how results are laid out in cells. */
export * from "./argument";
export * from "./choice";
export * from "./day";
export * from "./error";
export * from "./grid";
export * from "./header";
export * from "./keys";
export * from "./lift";
export * from "./list";
export * from "./quantity";
export * from "./report";
export * from "./rows";
export * from "./table";
export * from "./tableArgument";
export * from "./text";
export * from "./value";
export * from "./visible";
