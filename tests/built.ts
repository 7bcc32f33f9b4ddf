import { join } from "node:path";
import { DIST } from "../src/tools/paths";

/** Where a file that the build makes is. A test that asks runs in a project that builds it first. */
export const built = (...path: string[]) => join(DIST, ...path);
