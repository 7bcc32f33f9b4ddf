import type { Area } from "../../formula/address";
import { LIMITS } from "../../xlsx/limits";

/**
 * Refuses to go through more cells than there is room for: a reference that a formula makes (OFFSET, INDIRECT) can be a
 * whole sheet, which no look at the formula tells beforehand. The formula shows #VALUE! (see `failAlone`).
 */
export function expectRoomFor({ startRow, startColumn, endRow, endColumn }: Area): void {
  if (isTooLarge(endRow - startRow + 1, endColumn - startColumn + 1)) {
    throw new Error("the formula reads more cells than there is room for");
  }
}

/** Whether so many rows and columns are more than a formula can read or make. */
export const isTooLarge = (rows: number, columns: number): boolean =>
  rows * columns > LIMITS.cellsRead;
