import type { Argument } from "./argument";
import { CellError, invalid } from "./error";
import { cellsOf, firstCell, isSingle, sizeOf, toRange } from "./grid";
import { hasHeaderRow } from "./header";
import { nthColumn, nthRow } from "./place";
import { readQuantity, type Quantity } from "./quantity";
import { readCell } from "./value";

/** The numbers of a list, along a row or down a column; a heading and blanks are passed over. */
export function readList(argument: unknown, quantity: Quantity): number[] {
  const range = toRange(argument);
  if (range.rows > 1 && range.columns > 1) {
    throw invalid(`${quantity.name} has ${sizeOf(range)}; expected one row or one column`);
  }
  const start = hasHeaderRow([range]) ? 1 : 0;
  const nth = range.columns > 1 ? nthColumn : nthRow;
  return cellsOf(range)
    .slice(start)
    .map((raw, index) => {
      const number = readQuantity(readCell(raw), quantity);
      if (!(number instanceof CellError)) return number;
      throw isSingle(range) ? number : number.of(nth(index + start + 1));
    })
    .filter((number) => number !== null);
}

/** The one value of an argument that cannot be a range here; `null` where it is blank. */
export function readOne<T>({ name, range, read }: Argument<T>): T | null {
  if (!isSingle(range)) throw invalid(`${name} has ${sizeOf(range)}; expected one value`);
  const value = read(readCell(firstCell(range)));
  if (value instanceof CellError) throw value;
  return value;
}
