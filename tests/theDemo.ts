import { fileOf, openDemo } from "../src/tools/samples";

/*
 * The demo, computed once for all the tests of a process. They read it; whoever writes to a cell opens one
 * of their own.
 */

const once = <T>(compute: () => T): (() => T) => {
  let found: { readonly value: T } | undefined;
  return () => (found ??= { value: compute() }).value;
};

/** The demo as an open workbook, which stays open. */
export const computedDemo = once(openDemo);

/** The demo as its file. */
export const demoBytes = once(async () => fileOf(await computedDemo()));
