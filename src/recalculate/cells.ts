import type { Area } from "../formula/address";

/** Every cell of an area, row by row. */
export function* cellsOf(area: Area): Generator<{ row: number; column: number }> {
  for (let row = area.startRow; row <= area.endRow; row++) {
    for (let column = area.startColumn; column <= area.endColumn; column++) yield { row, column };
  }
}

/** Whether two areas have a cell in common. */
export function meet(one: Area, other: Area): boolean {
  return (
    one.startRow <= other.endRow &&
    other.startRow <= one.endRow &&
    one.startColumn <= other.endColumn &&
    other.startColumn <= one.endColumn
  );
}
