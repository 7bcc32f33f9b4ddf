import { CELL_INVERTED_INDEX_CACHE as columnIndex } from "@univerjs/engine-formula";

/**
 * Has the engine compare every cell by what it holds.
 *
 * Once a formula has compared a column with something, the engine answers the next comparison from
 * an index of the column's values. That index holds 0 and `"0"`, and in part 0 and blank, as one
 * value, so that `IF(C2="","",…)` leaves out a reserve of 0, a set to failure. It also looks through
 * all of the column's values whenever one cell is computed, which makes long columns slow. The one
 * index that all open workbooks share is therefore told to keep nothing and to answer nothing.
 */
export function compareCellByCell(): void {
  const empty: Pick<typeof columnIndex, "set" | "setContinueBuildingCache" | "canUseCache"> = {
    set: () => undefined,
    setContinueBuildingCache: () => undefined,
    canUseCache: () => ({ rowsInCache: [], rowsNotInCache: [] }),
  };
  Object.assign(columnIndex, empty);
}
