import type { FormulaCell } from "../book";
import { indexFills } from "./fills";
import type { Reads } from "./reads";

/** Why a formula in a circle is left: programs go round it in ways of their own. */
export const IN_A_CIRCLE = "it reads its own result";

/**
 * The formulas that read their own result, by themselves or by way of others (Tarjan 1972, the strongly connected
 * components of what reads what).
 */
export function findCircles(
  formulas: readonly FormulaCell[],
  readsOf: (cell: FormulaCell) => Reads,
): ReadonlySet<FormulaCell> {
  const fills = indexFills(formulas);
  const circular = new Set<FormulaCell>();
  const order = new Map<FormulaCell, number>();
  const lowest = new Map<FormulaCell, number>();
  const open: FormulaCell[] = [];
  const isOpen = new Set<FormulaCell>();
  for (const cell of formulas) if (!order.has(cell)) follow(cell);
  return circular;

  function follow(first: FormulaCell): void {
    // A walk of its own instead of a function that calls itself: chains of cells are long.
    const walk = [enter(first)];
    for (let step = walk.at(-1); step; step = walk.at(-1)) {
      const next = step.reads[step.at++];
      if (next === undefined) {
        walk.pop();
        leave(step.cell, step.reads);
        const before = walk.at(-1);
        if (before) lower(before.cell, lowest.get(step.cell)!);
      } else if (!order.has(next)) walk.push(enter(next));
      else if (isOpen.has(next)) lower(step.cell, order.get(next)!);
    }
  }

  function enter(cell: FormulaCell) {
    order.set(cell, order.size);
    lowest.set(cell, order.get(cell)!);
    open.push(cell);
    isOpen.add(cell);
    return { cell, reads: precedentsOf(cell), at: 0 };
  }

  function precedentsOf(cell: FormulaCell): readonly FormulaCell[] {
    const reads = readsOf(cell).areas.flatMap(({ sheet, area }) => fills.in(sheet, area));
    return TELLS_PLACES.test(cell.text) ? reads.filter((other) => other !== cell) : reads;
  }

  function lower(cell: FormulaCell, to: number): void {
    lowest.set(cell, Math.min(lowest.get(cell)!, to));
  }

  function leave(cell: FormulaCell, reads: readonly FormulaCell[]): void {
    if (lowest.get(cell) !== order.get(cell)) return;
    const circle = open.splice(open.indexOf(cell));
    for (const each of circle) isOpen.delete(each);
    if (circle.length > 1 || reads.includes(cell)) for (const each of circle) circular.add(each);
  }
}

/**
 * The same where the engine went in a circle: if none is to be seen, it is one of cells that formulas do not name, and
 * all that read such cells are in doubt.
 */
export function circlesBehind(
  formulas: readonly FormulaCell[],
  readsOf: (cell: FormulaCell) => Reads,
): ReadonlySet<FormulaCell> {
  const seen = findCircles(formulas, readsOf);
  return seen.size > 0 ? seen : new Set(formulas.filter((cell) => readsOf(cell).anywhere));
}

/** These tell where cells stand, and may name their own. */
const TELLS_PLACES = /\b(?:ROWS?|COLUMNS?)\(/i;
