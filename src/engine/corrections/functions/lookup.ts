import type { BaseFunction } from "@univerjs/engine-formula";
import { onlyCell, widthOf } from "../../../cells";
import { keyOf } from "./criterion";
import { notAvailable, wrongValue } from "./numbers";
import { Corrected, Fault, fromGrid, toGrid, toPlain, type Plain, type PlainGrid } from "./plain";
import { hasWildcards, wildcardPattern } from "./wildcards";

/**
 * XLOOKUP and XMATCH. The engine takes blank cells for 0 and FALSE in them, and wildcards where none were asked for.
 */
export const lookupFunctions = (): readonly BaseFunction[] => [
  new Corrected("XLOOKUP", [3, 6], (sought, searched, results, otherwise, match, search) => {
    const where = searchList(toGrid(searched));
    const from = toGrid(results);
    const along = where.isColumn ? from.length : widthOf(from);
    if (along !== where.cells.length) return fromGrid([[wrongValue]]);
    const modes = readModes(toPlain(match), toPlain(search));
    const wanted = toGrid(sought);
    const found = wanted.map((row) =>
      row.map((value): PlainGrid | undefined => {
        const place = find(value, where.cells, modes);
        if (typeof place === "object") return [[place]];
        if (place === undefined) return undefined;
        return where.isColumn ? [from[place] ?? []] : from.map((each) => [each[place] ?? null]);
      }),
    );
    if (onlyCell(wanted) === undefined) {
      return fromGrid(
        found.map((row) => row.map((one) => shown(one?.[0]?.[0] ?? absent(otherwise)))),
      );
    }
    const one = onlyCell(found);
    if (!one) return otherwise && !otherwise.isNull() ? otherwise : fromGrid([[notAvailable]]);
    return fromGrid(one.map((row) => row.map(shown)));
  }),
  new Corrected("XMATCH", [2, 4], (sought, searched, match, search) => {
    const { cells } = searchList(toGrid(searched));
    const modes = readModes(toPlain(match), toPlain(search));
    return fromGrid(
      toGrid(sought).map((row) =>
        row.map((value): Plain => {
          const place = find(value, cells, modes);
          if (typeof place === "object") return place;
          return place === undefined ? notAvailable : place + 1;
        }),
      ),
    );
  }),
];

const absent = (otherwise: Parameters<typeof toGrid>[0] | undefined): Plain =>
  otherwise && !otherwise.isNull() ? (toGrid(otherwise)[0]?.[0] ?? null) : notAvailable;

/** A blank cell that was found shows as 0. */
const shown = (value: Plain): Plain => value ?? 0;

function searchList(grid: PlainGrid): { cells: readonly Plain[]; isColumn: boolean } {
  const [first = []] = grid;
  const isColumn = first.length === 1;
  return { cells: isColumn ? grid.flat() : first, isColumn };
}

interface Modes {
  readonly match: "same" | "same or less" | "same or more" | "wildcards";
  readonly fromEnd: boolean;
}

function readModes(match: Plain, search: Plain): Modes {
  const modes = { "-1": "same or less", "1": "same or more", "2": "wildcards" } as const;
  const key = String(Number(match ?? 0)) as keyof typeof modes;
  return { match: modes[key] ?? "same", fromEnd: Number(search ?? 1) < 0 };
}

/** Where a value stands in a list; an error that was sought is its own answer. */
function find(sought: Plain, cells: readonly Plain[], modes: Modes): number | undefined | Fault {
  if (sought instanceof Fault) return sought;
  const places = modes.fromEnd ? [...cells.keys()].reverse() : cells.keys();
  const isSame = sameAs(sought, modes.match === "wildcards");
  let nearest: { place: number; cell: Plain } | undefined;
  for (const place of places) {
    const cell = cells[place] ?? null;
    if (isSame(cell)) return place;
    if (modes.match !== "same or less" && modes.match !== "same or more") continue;
    const wanted = modes.match === "same or less" ? -1 : 1;
    if (compare(cell, sought) !== wanted) continue;
    if (!nearest || compare(cell, nearest.cell) === -wanted) nearest = { place, cell };
  }
  return nearest?.place;
}

function sameAs(sought: Exclude<Plain, Fault>, wildcards: boolean): (cell: Plain) => boolean {
  if (typeof sought === "string" && wildcards && hasWildcards(sought)) {
    const pattern = wildcardPattern(sought, "whole");
    return (cell) => typeof cell === "string" && pattern.test(cell);
  }
  if (typeof sought === "string") {
    const lower = sought.toLowerCase();
    return (cell) => typeof cell === "string" && cell.toLowerCase() === lower;
  }
  const key = keyOf(sought);
  return (cell) => typeof cell !== "string" && keyOf(cell) === key;
}

/** The order of two values of one kind; nothing where they are of two. */
function compare(one: Plain, other: Plain): -1 | 0 | 1 | undefined {
  if (typeof one !== typeof other || one === null || other === null) return undefined;
  if (one instanceof Fault || other instanceof Fault) return undefined;
  const [left, right] =
    typeof one === "string" ? [one.toLowerCase(), String(other).toLowerCase()] : [one, other];
  return left === right ? 0 : left < right ? -1 : 1;
}
