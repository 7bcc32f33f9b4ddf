import { createRequire } from "node:module";
import type typescript from "typescript";

/**
 * TypeScript for tests. Node reads a package of nine megabytes once where it is required; where it is imported, twice
 * more, to find out what kind of module it is and what it exports.
 */
export default createRequire(import.meta.url)("typescript") as typeof typescript;
