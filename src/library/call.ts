import type { Grid } from "../cells/grid";
import { implementations } from "../functions/implementations";

/**
 * Computes a cell function on grids, as a cell would: `call("LOADFOR", [140, 5, 2, 2.5])` is `[[112.5]]`.
 *
 * @param id - The function's name: "LOADFOR", "SPARE.LOADFOR" and "SPARE_LOADFOR" are one.
 * @param args - Its arguments in their order: a cell, or rows of cells, so that `[[100], [102.5]]` is a column. A blank
 *   cell is `null` or ""; an argument that is left out is `null` or `undefined`; a date is a `Date` or a sheet's number.
 * @returns Rows of cells, all of one width: numbers, texts, and a `CellError` where a cell would show one. Bad cells never
 *   throw.
 * @throws Error where there is no function of that name.
 */
export function call(id: string, args: readonly unknown[]): Grid {
  const name = id.toUpperCase().replace(/^SPARE[._]/, "");
  const implementation = Object.hasOwn(implementations, name) ? implementations[name] : undefined;
  if (implementation === undefined) throw new Error(`there is no function "${id}"`);
  return implementation(...args);
}
