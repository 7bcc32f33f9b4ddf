import { CellError, widthOf } from "../../cells";
import { NO_ROOM } from "../../engine/messages";
import {
  cellsOf,
  contains,
  isSeveralCells,
  LAST_COLUMN,
  LAST_ROW,
  meet,
} from "../../formula/address";
import type { Area } from "../../formula/address";
import { implementationOf } from "../../functions/implementationOf";
import type { Implementations } from "../../functions/implementations";
import type { Book, FormulaCell } from "../book";
import { extentChanges } from "../reach/extent";
import type { Fills } from "../reach/fills";
import type { Result } from "../result";
import { placeResult } from "../result";
import type { Values } from "../values";
import { readArguments } from "./arguments";
import type { DirectCall } from "./parseCall";

/** What could be worked out without the engine. */
export interface WorkedOut {
  readonly results: Map<FormulaCell, Result>;
  /** Calls that had read cells which another result only then came to fill, or to leave. */
  readonly tooEarly: ReadonlySet<FormulaCell>;
}

/**
 * Works out calls that need no spreadsheet engine, each after those it reads, and puts into `values` what
 * they come to. Calls that read from a formula which is not among them, or in a circle from themselves,
 * are left out. `fills` tells of all formulas that are to be computed.
 */
export function workOut(
  { sheets }: Book,
  calls: ReadonlyMap<FormulaCell, DirectCall>,
  fills: Fills,
  values: Values,
  implementations: Implementations,
  onResult: (done: number) => void,
): WorkedOut {
  const byName = new Map(sheets.map((sheet) => [sheet.name, sheet]));
  const results = new Map<FormulaCell, Result>();
  const tooEarly = new Set<FormulaCell>();
  const states = new Map<FormulaCell, "begun" | "done" | "left out">();
  const spilled: { cell: FormulaCell; area: Area }[] = [];

  // Results of several cells first: others may read what they come to fill.
  const severalFirst = [...calls.keys()].sort(
    (one, other) => Number(isSeveralCells(other.area)) - Number(isSeveralCells(one.area)),
  );
  for (const cell of severalFirst) settle(cell);
  return { results, tooEarly };

  /** Works out a call after all it waits for. A log can be a chain of 100,000, so without recursion. */
  function settle(first: FormulaCell): void {
    const waiting = [first];
    for (let cell = waiting.at(-1); cell; cell = waiting.at(-1)) {
      const state = states.get(cell);
      const needed = state === undefined || state === "begun" ? neededBy(cell) : [];
      if (state === undefined && needed && needed.length > 0) {
        states.set(cell, "begun");
        waiting.push(...needed);
        continue;
      }
      if (state === undefined || state === "begun") {
        const isReady = needed?.length === 0;
        states.set(cell, isReady && compute(cell) ? "done" : "left out");
      }
      waiting.pop();
    }
  }

  /** The calls that a call waits for; nothing where it waits in vain. */
  function neededBy(cell: FormulaCell): FormulaCell[] | undefined {
    const needed: FormulaCell[] = [];
    for (const argument of calls.get(cell)!.given) {
      if (argument.kind !== "range" || argument.sheet === undefined) continue;
      for (const other of fills.in(argument.sheet, argument.area)) {
        const state = states.get(other);
        if (state === "done") continue;
        if (state !== undefined || other === cell || !calls.has(other)) return undefined;
        needed.push(other);
      }
    }
    return needed;
  }

  /** Works out a call, or says that it cannot be told here where its result may go. */
  function compute(cell: FormulaCell): boolean {
    const call = calls.get(cell)!;
    const given = readArguments(call, (name) => byName.get(name), values);
    const grid = implementationOf(implementations, call.id)(...given);
    const { row, column, kind } = cell;
    const own = { startRow: row, startColumn: column, endRow: row, endColumn: column };
    const natural =
      kind === "one cell"
        ? own
        : { ...own, endRow: row + grid.length - 1, endColumn: column + widthOf(grid) - 1 };
    const spills = kind === "spilling" && isSeveralCells(natural);
    const obstacle = spills ? obstacleTo(cell, natural) : undefined;
    if (obstacle === "a formula") return false;

    const contentAt = (r: number, c: number) => grid[r - row]?.[c - column] ?? "";
    const result =
      obstacle === "a value"
        ? placeResult(
            cell,
            own,
            () => "#SPILL!",
            () => NO_ROOM,
          )
        : placeResult(
            cell,
            natural,
            (r, c) => {
              const content = contentAt(r, c);
              return content instanceof CellError ? content.code : content;
            },
            (r, c) => {
              const content = contentAt(r, c);
              return content instanceof CellError ? content.message : undefined;
            },
          );
    results.set(cell, result);
    if (results.size % 256 === 0) onResult(results.size);
    if (isSeveralCells(result.area)) spilled.push({ cell, area: result.area });
    for (const change of extentChanges(cell.area, result.area)) noteReaders(cell, change);
    values.clear(cell.sheet, cell.area, result.area);
    values.put(cell.sheet, result.area, result.values);
    return true;
  }

  /** What keeps a result from spilling, if anything does. */
  function obstacleTo(cell: FormulaCell, natural: Area): "a value" | "a formula" | undefined {
    const { sheet } = cell;
    for (const other of fills.in(sheet.name, natural)) if (other !== cell) return "a formula";
    const meets = spilled.some((other) => other.cell.sheet === sheet && meet(other.area, natural));
    if (meets) return "a formula";
    if (natural.endRow > LAST_ROW || natural.endColumn > LAST_COLUMN) return "a value";
    for (const { row, column } of cellsOf(natural)) {
      if (contains(cell.area, row, column)) continue;
      const there = sheet.cellAt(row, column);
      if (there?.formula || (there && there.value !== null)) return "a value";
    }
    return undefined;
  }

  function noteReaders({ sheet }: FormulaCell, area: Area): void {
    for (const other of results.keys()) {
      const reads = calls
        .get(other)!
        .given.some(
          (argument) =>
            argument.kind === "range" && argument.sheet === sheet.name && meet(argument.area, area),
        );
      if (reads) tooEarly.add(other);
    }
  }
}
