import type { OnProgress } from "../engine/headless";
import { knownFunctions } from "../engine/known";
import type { Book, FormulaCell } from "./book";
import type { DirectFormula } from "./direct/expression";
import { callsOf } from "./direct/expression";
import { formulaParser } from "./direct/filledDown";
import { weigh } from "./evidence";
import { computeInEngine, type Functions } from "./inEngine";
import { indexAreas } from "./reach/areaIndex";
import { circlesBehind, findCircles, IN_A_CIRCLE } from "./reach/circles";
import { indexFills } from "./reach/fills";
import { indexReaders } from "./reach/readers";
import { readsFinder, type Reads, type SheetArea } from "./reach/reads";
import { leaveReadersOf, unsavedBehind } from "./reach/withoutValue";
import { isAsSaved, type Result } from "./result";
import { findUnable, type Unable } from "./unable";

/** Cells that a formula fills or has filled. */
export interface Moved extends SheetArea {
  readonly by: FormulaCell;
}

/** Which of a workbook's formulas are to be computed, and how; it grows as results come to light. */
export interface Selection {
  /** The formulas to be computed. */
  live(): FormulaCell[];
  /** Those of them that need no engine. */
  direct(): ReadonlyMap<FormulaCell, DirectFormula>;
  /** Takes in the formulas that read from these areas; says whether there are more now. */
  admit(areas: readonly Moved[]): Promise<boolean>;
  /** Lets a formula keep its value. */
  leave(cell: FormulaCell, reason: string): void;
  /** The same of those that read their own results; says whether there are any. */
  leaveCircles(cells: readonly FormulaCell[]): boolean;
  leaveToEngine(cells: Iterable<FormulaCell>): void;
  /** The same of formulas that read from these areas; says whether there are any. */
  leaveReadersToEngine(areas: readonly SheetArea[]): boolean;
  /** What the engine came to for a formula while all it reads was as saved, where that was weighed. */
  reproduced(cell: FormulaCell): Result | undefined;
  /** The formulas that keep a value which what they read has left behind, and why. */
  stale(
    changed: readonly FormulaCell[],
    results: ReadonlyMap<FormulaCell, Result>,
  ): [FormulaCell, string][];
}

export async function createSelection(
  book: Book,
  ours: readonly FormulaCell[],
  functions: Functions,
  onProgress?: OnProgress,
): Promise<Selection> {
  const direct = new Map<FormulaCell, DirectFormula>();
  const readsIn = readsFinder(book);
  const readsOf = remembered((cell) => directReads(direct.get(cell)) ?? readsIn(cell));
  const isOurs = new Set(ours);
  const others = book.formulas.filter((cell) => !isOurs.has(cell));
  const readers = indexReaders(others.map((cell) => [cell, readsOf(cell)] as const));
  const unsaved = others.filter(({ saved, kind }) => saved === null && kind !== "data table");
  const left = new Map<FormulaCell, string>();
  const reproduced = new Map<FormulaCell, Result>();
  /** All that has ever read from ours, and the areas from which the search for it started. */
  const found = new Set<FormulaCell>();
  const starts: Moved[] = [];
  let dependents: FormulaCell[] = [];
  let behind: ReadonlySet<FormulaCell> = new Set();

  const parse = formulaParser(book);
  for (const cell of ours) {
    const formula = parse(cell);
    const isKnown =
      formula && callsOf(formula.expression).every(({ id }) => id in functions.implementations);
    if (isKnown) direct.set(cell, formula);
  }
  let unable: Unable | undefined;
  for (const cell of ours) if (!direct.has(cell)) await judge(cell);
  await admit(
    others.length === 0
      ? []
      : ours.flatMap((by) => (left.has(by) ? [] : [{ sheet: by.sheet.name, area: by.area, by }])),
  );

  return {
    live: () => [...ours, ...dependents, ...behind].filter((cell) => !left.has(cell)),
    direct() {
      if (left.size === 0) return direct;
      return new Map([...direct].filter(([cell]) => !left.has(cell)));
    },
    admit,
    leave: (cell, reason) => void left.set(cell, reason),
    leaveCircles(cells) {
      const circles = circlesBehind(cells, readsOf);
      for (const cell of circles) left.set(cell, IN_A_CIRCLE);
      if (circles.size > 0) leaveReadersOf([...behind, ...ours, ...dependents], left, readsOf);
      return circles.size > 0;
    },
    leaveToEngine(cells) {
      for (const cell of cells) direct.delete(cell);
    },
    leaveReadersToEngine(areas) {
      if (areas.length === 0) return false;
      const moved = indexAreas(areas, (place) => place);
      const early = [...direct].filter(([, { reads }]) =>
        reads.some(
          ({ sheet, area }) => sheet !== undefined && moved.first(sheet, area) !== undefined,
        ),
      );
      for (const [cell] of early) direct.delete(cell);
      return early.length > 0;
    },
    reproduced: (cell) => reproduced.get(cell),
    stale(changed, results) {
      if (left.size === 0) return [];
      const moved = changed.filter((cell) => !isAsSaved(cell, results.get(cell)!));
      const before = indexFills(moved);
      const after = indexFills(moved, (cell) => results.get(cell)!.area);
      const readsMoved = (cell: FormulaCell) => {
        const { areas, anywhere } = readsOf(cell);
        if (anywhere && moved.length > 0) return true;
        return areas.some(({ sheet, area }) =>
          [before, after].some((fills) => fills.first(sheet, area) !== undefined),
        );
      };
      return [...left].filter(([cell]) => {
        return isOurs.has(cell) || (found.has(cell) && readsMoved(cell));
      });
    },
  };

  /** Leaves a formula that the engine cannot work out as Excel would. */
  async function judge(cell: FormulaCell): Promise<void> {
    unable ??= findUnable(book, await knownFunctions());
    const reason = unable(cell);
    if (reason !== undefined) left.set(cell, reason);
  }

  async function admit(areas: readonly Moved[]): Promise<boolean> {
    const before = dependents.length + behind.size;
    for (const area of areas) starts.push(area);
    const fresh: FormulaCell[] = [];
    const waiting: SheetArea[] = [...areas];
    for (let area = waiting.pop(); area; area = waiting.pop()) {
      for (const reader of readers.take(area)) {
        found.add(reader);
        await judge(reader);
        // What reads from a formula that keeps its value has no reason to change.
        if (left.has(reader)) continue;
        fresh.push(reader);
        waiting.push({ sheet: reader.sheet.name, area: reader.area });
      }
    }
    dependents = dependents.concat(fresh);
    await admitUnsaved();
    if (fresh.length > 0) leaveCirclesAmong([...ours, ...dependents, ...behind]);
    await admitByEvidence(fresh);
    dependents = stillReached();
    return dependents.length + behind.size !== before;
  }

  /** What ours and their readers read, and was saved without a value, is computed as well. */
  async function admitUnsaved(): Promise<void> {
    if (unsaved.length > 0) {
      behind = unsavedBehind([...ours, ...dependents], indexFills(unsaved), readsOf);
      for (const cell of dependents) (behind as Set<FormulaCell>).delete(cell);
      for (const cell of behind) if (!left.has(cell)) await judge(cell);
    }
    leaveReadersOf([...behind, ...ours, ...dependents], left, readsOf);
  }

  /** Where ours read, by way of others, from themselves. */
  function leaveCirclesAmong(cells: readonly FormulaCell[]): void {
    const computed = cells.filter((cell) => !left.has(cell));
    for (const cell of findCircles(computed, readsOf)) left.set(cell, IN_A_CIRCLE);
  }

  async function admitByEvidence(fresh: readonly FormulaCell[]): Promise<void> {
    const computed = [...ours, ...dependents, ...behind];
    const empty = indexFills(computed.filter((cell) => cell.saved === null && !left.has(cell)));
    const unsavedStarts = starts.filter(({ by }) => by.saved === null);
    const fromEmpty = indexAreas(unsavedStarts, (start) => start);
    const weighed = fresh.filter((cell) => {
      if (cell.saved === null || left.has(cell)) return false;
      return readsOf(cell).areas.every(({ sheet, area }) =>
        [empty, fromEmpty].every((index) => index.first(sheet, area) === undefined),
      );
    });
    const evidence = await weigh(weighed, readsOf, (formulas, holds) =>
      computeInEngine(book, formulas, holds, [], () => false, functions, onProgress),
    );
    for (const [cell, reason] of evidence.against) left.set(cell, reason);
    for (const [cell, result] of evidence.reproduced) reproduced.set(cell, result);
  }

  /** The readers that are reached by way of formulas which do not keep their value. */
  function stillReached(): FormulaCell[] {
    const candidates = [...found].filter((cell) => !left.has(cell));
    const among = indexReaders(candidates.map((cell) => [cell, readsOf(cell)] as const));
    const reached: FormulaCell[] = [];
    const waiting: SheetArea[] = [...starts];
    for (let area = waiting.pop(); area; area = waiting.pop()) {
      for (const cell of among.take(area)) {
        reached.push(cell);
        waiting.push({ sheet: cell.sheet.name, area: cell.area });
      }
    }
    return reached;
  }
}

/** What a formula reads that was taken apart already. */
function directReads(formula: DirectFormula | undefined): Reads | undefined {
  if (!formula) return undefined;
  const areas = formula.reads.flatMap(({ sheet, area }) =>
    sheet === undefined ? [] : { sheet, area },
  );
  return { areas, anywhere: false };
}

function remembered(readsOf: (cell: FormulaCell) => Reads): (cell: FormulaCell) => Reads {
  const known = new Map<FormulaCell, Reads>();
  return (cell) => {
    const reads = known.get(cell) ?? readsOf(cell);
    known.set(cell, reads);
    return reads;
  };
}
