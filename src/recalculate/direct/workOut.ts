import { widthOf, type Grid } from "../../cells";
import { messageIn, NO_ROOM } from "../../engine/messages";
import { nextTask } from "../../engine/nextTask";
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
import { isError, type CellValue } from "../../xlsx/model";
import type { ReadSheet } from "../../xlsx/read/sheet";
import type { Book, FormulaCell } from "../book";
import { extentChanges } from "../reach/extent";
import type { Fills } from "../reach/fills";
import type { Result } from "../result";
import { placeResult } from "../result";
import type { Values } from "../values";
import { readArguments } from "./arguments";
import { contentsOf, evaluate } from "./evaluate";
import { Uncertain } from "./operators";
import type { CellReference, DirectFormula, Expression, OurCall } from "./expression";
import { readersBefore, type Change } from "./tooEarly";

/** What could be worked out without the engine. */
export interface WorkedOut {
  readonly results: Map<FormulaCell, Result>;
  /** Formulas that had read cells which another result only then came to fill, or to leave. */
  readonly tooEarly: ReadonlySet<FormulaCell>;
}

/**
 * Works out formulas that need no spreadsheet engine, each after those it reads, and puts into `values` what
 * they come to. Those that read from a formula which is not among them, or in a circle from themselves, are left
 * out, and those of which only the engine can tell. `fills` tells of all formulas that are to be computed.
 */
export async function workOut(
  { sheets }: Book,
  formulas: ReadonlyMap<FormulaCell, DirectFormula>,
  fills: Fills,
  values: Values,
  implementations: Implementations,
  onResult: (done: number) => void,
): Promise<WorkedOut> {
  const byName = new Map(sheets.map((sheet) => [sheet.name, sheet]));
  const results = new Map<FormulaCell, Result>();
  const changes: Change[] = [];
  const states = new Map<FormulaCell, "begun" | "done" | "left out">();
  const spilled = new Map<ReadSheet, Spilled>();

  // Results of several cells first: others may read what they come to fill.
  for (const cell of formulas.keys()) if (isSeveralCells(cell.area)) settle(cell);
  let begun = 0;
  for (const cell of formulas.keys()) {
    settle(cell);
    if (++begun % AT_ONCE === 0) await nextTask();
  }
  return { results, tooEarly: readersBefore(changes, [...results.keys()], formulas) };

  /** Works out a formula after all it waits for. A log can be a chain of 100,000, so without recursion. */
  function settle(first: FormulaCell): void {
    const waiting = [first];
    for (let cell = waiting.at(-1); cell; cell = waiting.at(-1)) {
      const state = states.get(cell);
      const needed = state === undefined || state === "begun" ? neededBy(cell) : [];
      if (state === undefined && needed && needed.length > 0) {
        states.set(cell, "begun");
        for (const other of needed) waiting.push(other);
        continue;
      }
      if (state === undefined || state === "begun") {
        const isReady = needed?.length === 0;
        states.set(cell, isReady && compute(cell) ? "done" : "left out");
      }
      waiting.pop();
    }
  }

  /** The formulas that a formula waits for; nothing where it waits in vain. */
  function neededBy(cell: FormulaCell): FormulaCell[] | undefined {
    const needed: FormulaCell[] = [];
    for (const { sheet, area } of formulas.get(cell)!.reads) {
      if (sheet === undefined) continue;
      for (const other of fills.in(sheet, area)) {
        const state = states.get(other);
        if (state === "done") continue;
        if (state !== undefined || other === cell || !formulas.has(other)) return undefined;
        needed.push(other);
      }
    }
    return needed;
  }

  /** Works out a formula, or says that it cannot be told here what it comes to, or where that may go. */
  function compute(cell: FormulaCell): boolean {
    const outcome = outcomeOf(formulas.get(cell)!.expression);
    if (!outcome) return false;
    const { values: rows, calls } = outcome;
    const { row, column, kind } = cell;
    const own = { startRow: row, startColumn: column, endRow: row, endColumn: column };
    const natural =
      kind === "one cell"
        ? own
        : { ...own, endRow: row + rows.length - 1, endColumn: column + widthOf(rows) - 1 };
    const spills = kind === "spilling" && isSeveralCells(natural);
    const obstacle = spills ? obstacleTo(cell, natural) : undefined;
    if (obstacle === "a formula") return false;

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
            (r, c) => rows[r - row]?.[c - column] ?? null,
            (r, c, code) => messageIn(calls, code, r - row, c - column),
          );
    results.set(cell, result);
    if (results.size % 256 === 0) onResult(results.size);
    noteSpill(cell.sheet, result.area);
    for (const area of extentChanges(cell.area, result.area)) {
      changes.push({ sheet: cell.sheet.name, area, after: results.size });
    }
    values.clear(cell.sheet, cell.area, result.area);
    values.put(cell.sheet, result.area, result.values);
    return true;
  }

  /** What an expression and the calls of ours in it come to; nothing where only the engine can tell. */
  function outcomeOf(expression: Expression): Outcome | undefined {
    const calls: Grid[] = [];
    const around = {
      valueOf({ sheet, row, column }: CellReference) {
        const named = sheet === undefined ? undefined : byName.get(sheet);
        return named && values.at(named, row, column);
      },
      compute(call: OurCall) {
        const given = readArguments(call, (name) => byName.get(name), values, argument);
        const grid = implementationOf(implementations, call.id)(...given);
        calls.push(grid);
        return grid;
      },
    };
    /** What our functions make of an error or a blank that was worked out is theirs to say, but not here. */
    function argument(expression: Expression): CellValue {
      const value = evaluate(expression, around);
      if (value === null || isError(value)) throw new Uncertain();
      return value;
    }
    try {
      const rows =
        expression.kind === "ours"
          ? contentsOf(around.compute(expression))
          : [[evaluate(expression, around) ?? 0]];
      return { values: rows, calls };
    } catch (error) {
      if (error instanceof Uncertain) return undefined;
      throw error;
    }
  }

  /** What keeps a result from spilling, if anything does. */
  function obstacleTo(cell: FormulaCell, natural: Area): "a value" | "a formula" | undefined {
    const { sheet } = cell;
    if (fills.first(sheet.name, natural, cell)) return "a formula";
    if (natural.endRow > LAST_ROW || natural.endColumn > LAST_COLUMN) return "a value";
    const others = spilled.get(sheet);
    if (others?.large.some((area) => meet(area, natural))) return "a formula";
    for (const { row, column } of cellsOf(natural)) {
      if (others?.cells.has(keyOf(row, column))) return "a formula";
      if (contains(cell.area, row, column)) continue;
      const there = sheet.cellAt(row, column);
      if (there?.formula || (there && there.value !== null)) return "a value";
    }
    return undefined;
  }

  function noteSpill(sheet: ReadSheet, area: Area): void {
    if (!isSeveralCells(area)) return;
    const ofSheet = spilled.get(sheet) ?? { cells: new Set<number>(), large: [] };
    spilled.set(sheet, ofSheet);
    if (area.endRow - area.startRow >= LARGE) ofSheet.large.push(area);
    else for (const { row, column } of cellsOf(area)) ofSheet.cells.add(keyOf(row, column));
  }
}

/** What results of several cells fill on a sheet: each cell of the small ones, the areas of the few that are large. */
interface Spilled {
  readonly cells: Set<number>;
  readonly large: Area[];
}

/** From so many rows on, a list of cells is longer than it takes to compare areas. */
const LARGE = 1000;

/** As many formulas are worked out before others get a turn: a time limit, a signal. */
const AT_ONCE = 1024;

interface Outcome {
  readonly values: readonly (readonly CellValue[])[];
  readonly calls: readonly Grid[];
}

/** A cell's row and column as one number. */
const keyOf = (row: number, column: number) => row * (LAST_COLUMN + 1) + column;
