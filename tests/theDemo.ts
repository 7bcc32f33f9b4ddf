import { fileOf, openDemo } from "../src/tools/samples";
import { once } from "./once";

/*
 * The demo, computed once for all the tests of a process. They read it; whoever writes to a cell opens one
 * of their own.
 */

/** The demo as an open workbook, which stays open. */
export const computedDemo = once(openDemo);

/** The demo as its file. */
export const demoBytes = once(async () => fileOf(await computedDemo()));
