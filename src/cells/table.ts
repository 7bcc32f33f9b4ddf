import { notAvailable } from "./error";
import type { Content, Grid } from "./grid";
import type { Part } from "./report";

/** A table: its headings, then its rows. A value that does not exist is an empty cell. */
export function table(headings: readonly Content[], rows: readonly (readonly Part[])[]): Grid {
  return [
    [...headings],
    ...rows.map((row) => row.map((part) => (typeof part === "object" ? "" : part))),
  ];
}

/** A single result that may not exist: #N/A with the reason. */
export const contentOf = (part: Part): Content =>
  typeof part === "object" ? notAvailable(part.absent) : part;
