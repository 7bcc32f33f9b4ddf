import type { Nullable } from "@univerjs/core";
import type { BaseValueObject } from "@univerjs/engine-formula";
import {
  ArrayValueObject,
  BaseFunction,
  BooleanValueObject,
  ErrorType,
  ErrorValueObject,
  NullValueObject,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/engine-formula";
import { onlyCell, widthOf } from "../../../cells";

/** An error in a cell, by its code. */
export class Fault {
  constructor(readonly code: ErrorType) {}
}

/** What a cell can hold, out of the engine's wrapping. */
export type Plain = number | string | boolean | null | Fault;
export type PlainGrid = readonly (readonly Plain[])[];

export function toPlain(value: Nullable<BaseValueObject>): Plain {
  if (!value || value.isNull()) return null;
  if (value.isError()) return new Fault(value.getValue() as ErrorType);
  return value.getValue();
}

export function fromPlain(plain: Plain): BaseValueObject {
  if (plain === null) return NullValueObject.create();
  if (plain instanceof Fault) return ErrorValueObject.create(plain.code);
  if (typeof plain === "number") return NumberValueObject.create(plain);
  if (typeof plain === "boolean") return BooleanValueObject.create(plain);
  return StringValueObject.create(plain);
}

/** An argument of several cells as they lie; one value is a grid of one. */
export function toGrid(value: BaseValueObject): PlainGrid {
  return value.isArray()
    ? (value as ArrayValueObject).getArrayValue().map((row) => row.map((cell) => toPlain(cell)))
    : [[toPlain(value)]];
}

export function fromGrid(grid: PlainGrid): BaseValueObject {
  const only = onlyCell(grid);
  if (only !== undefined) return fromPlain(only);
  return ArrayValueObject.create({
    calculateValueList: grid.map((row) => row.map(fromPlain)),
    rowCount: grid.length,
    columnCount: widthOf(grid),
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
}

/** How many arguments a function takes, at least and at most. */
export type Arity = readonly [least: number, most: number];

/** A function of a spreadsheet's own that we compute instead of the engine. */
export class Corrected extends BaseFunction {
  constructor(
    name: string,
    [least, most]: Arity,
    private readonly compute: (...values: BaseValueObject[]) => BaseValueObject,
  ) {
    super(name);
    this.minParams = least;
    this.maxParams = most;
  }

  override calculate(...values: BaseValueObject[]): BaseValueObject {
    return this.compute(...values);
  }
}

/**
 * A function of single values, computed for every cell where it is given several: a single value
 * stretches, and so does one row or one column. The first error among its values is its result.
 */
export function cellByCell(
  name: string,
  arity: Arity,
  compute: (...values: Exclude<Plain, Fault>[]) => Plain,
): Corrected {
  return new Corrected(name, arity, (...values) => {
    const grids = values.map(toGrid);
    const rows = Math.max(...grids.map((grid) => grid.length));
    const columns = Math.max(...grids.map(widthOf));
    return fromGrid(
      Array.from({ length: rows }, (_row, row) =>
        Array.from({ length: columns }, (_column, column): Plain => {
          const own = grids.map((grid) => stretched(grid, row, column));
          const fault = own.find((each) => each instanceof Fault);
          return fault ?? compute(...(own as Exclude<Plain, Fault>[]));
        }),
      ),
    );
  });
}

export function stretched(grid: PlainGrid, row: number, column: number): Plain {
  const cells = grid.length === 1 ? grid[0] : grid[row];
  const value = cells?.length === 1 ? cells[0] : cells?.[column];
  return value === undefined ? new Fault(ErrorType.NA) : value;
}
