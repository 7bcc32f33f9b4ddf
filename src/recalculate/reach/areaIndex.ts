import type { Area } from "../../formula/address";
import { columnsOf, indexColumns, type Stretch } from "./columns";
import type { SheetArea } from "./reads";

/** Finds things by the cells in which they stand. */
export interface AreaIndex<T> {
  /** What stands in a cell of this area of the sheet; what stands in several may come more than once. */
  in(sheet: string, area: Area): readonly T[];
  /** The first of these, but for one. */
  first(sheet: string, area: Area, but?: T): T | undefined;
  /** Those of these that were never asked for in this way. */
  take(sheet: string, area: Area): readonly T[];
}

export function indexAreas<T>(items: Iterable<T>, placeOf: (item: T) => SheetArea): AreaIndex<T> {
  const sheets = indexColumns(items, placeOf);
  const taken = new Map<object, Int32Array>();

  return {
    in(sheet, area) {
      let found: T[] | undefined;
      for (const { items, from, to } of columnsOf(sheets, sheet, area)) {
        for (let at = from; at < to; at++) (found ??= []).push(items[at]!);
      }
      return found ?? [];
    },
    first(sheet, area, but) {
      for (const { items, from, to } of columnsOf(sheets, sheet, area)) {
        for (let at = from; at < to; at++) if (items[at] !== but) return items[at];
      }
      return undefined;
    },
    take(sheet, area) {
      const found: T[] = [];
      for (const stretch of columnsOf(sheets, sheet, area)) takeStretch(stretch, found);
      return found;
    },
  };

  /** Of each place in a column is kept from where on there may be more to take. */
  function takeStretch({ items, from, to }: Stretch<T>, found: T[]): void {
    const next = taken.get(items) ?? Int32Array.from({ length: items.length + 1 }, (_, at) => at);
    taken.set(items, next);
    for (let at = untaken(next, from); at < to; at = untaken(next, at)) {
      found.push(items[at]!);
      next[at] = at + 1;
    }
  }
}

/** Follows the places to the first that is not taken, and shortens the way for whoever comes next. */
function untaken(next: Int32Array, from: number): number {
  let at = from;
  for (let on = next[at]!; on !== at; on = next[at]!) {
    next[at] = next[on]!;
    at = next[at]!;
  }
  return at;
}
