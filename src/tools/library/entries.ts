/** What the package's `exports` name, by their paths from the project's top level. */
export const LIBRARY = ["src/core/index.ts", "src/library/functions.ts"];
