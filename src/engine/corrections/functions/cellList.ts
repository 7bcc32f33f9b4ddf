import type { BaseReferenceObject, BaseValueObject } from "@univerjs/engine-formula";
import { widthOf } from "../../../cells";
import { keptCells } from "../ownArrays";
import { keyOf } from "./criterion";
import { toGrid, type Plain } from "./plain";

/** The cells of a range in one list, row by row, that can be asked where a value stands. */
export interface CellList {
  readonly cells: readonly Plain[];
  readonly rows: number;
  readonly columns: number;
  /** Where the cells stand that have this key, in their order. */
  at(key: string): readonly number[];
}

export type Argument = BaseValueObject | BaseReferenceObject;

export const isReference = (value: Argument): value is BaseReferenceObject =>
  value.isReferenceObject();

/** Lists are kept as long as the engine keeps the cells, so that a formula filled down reads them once. */
const lists = new WeakMap<BaseValueObject, CellList>();

export function cellList(argument: Argument): CellList {
  const value = isReference(argument) ? keptCells(argument) : argument;
  const known = lists.get(value);
  if (known) return known;
  const list = readList(value);
  if (isReference(argument)) lists.set(value, list);
  return list;
}

function readList(value: BaseValueObject): CellList {
  const grid = toGrid(value);
  const cells = grid.flat();
  let places: Map<string, number[]> | undefined;
  return {
    cells,
    rows: grid.length,
    columns: widthOf(grid),
    at(key) {
      places ??= placesOf(cells);
      return places.get(key) ?? [];
    },
  };
}

function placesOf(cells: readonly Plain[]): Map<string, number[]> {
  const places = new Map<string, number[]>();
  cells.forEach((cell, index) => {
    const key = keyOf(cell);
    const found = places.get(key);
    if (found) found.push(index);
    else places.set(key, [index]);
  });
  return places;
}
