import { version } from "../../package.json";

/** The release that computed a number. Semantic: a release that gives any number otherwise is at least a minor one. */
export const VERSION: string = version;
