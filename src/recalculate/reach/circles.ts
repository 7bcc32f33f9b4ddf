import type { FormulaCell } from "../book";
import { indexColumns } from "./columns";
import { rangeGraph } from "./rangeGraph";
import type { Reads } from "./reads";

/** Why a formula in a circle is left: programs go round it in ways of their own. */
export const IN_A_CIRCLE = "it reads its own result";

/**
 * The formulas that read their own result, by themselves or by way of others (Tarjan 1972, the strongly connected
 * components of what reads what). Between a formula and the many that a range of it reads stand nodes for halves,
 * quarters and so on of a column, so that a column of running totals takes no longer than one of single cells.
 */
export function findCircles(
  formulas: readonly FormulaCell[],
  readsOf: (cell: FormulaCell) => Reads,
): ReadonlySet<FormulaCell> {
  const columns = indexColumns(formulas.keys(), (at) => {
    const { sheet, area } = formulas[at]!;
    return { sheet: sheet.name, area };
  });
  const graph = rangeGraph(formulas.length, columns);
  const circular = new Set<FormulaCell>();
  const order = new Int32Array(graph.size).fill(-1);
  const lowest = new Int32Array(graph.size);
  const isOpen = new Uint8Array(graph.size);
  const open: number[] = [];
  let entered = 0;
  for (let at = 0; at < formulas.length; at++) if (order[at]! < 0) follow(at);
  return circular;

  function follow(first: number): void {
    // A walk of its own instead of a function that calls itself: chains of cells are long.
    const walk = [enter(first)];
    for (let step = walk.at(-1); step; step = walk.at(-1)) {
      if (step.at === step.next.length) {
        walk.pop();
        leave(step.node, step.next);
        const before = walk.at(-1);
        if (before) lower(before.node, lowest[step.node]!);
        continue;
      }
      const next = step.next[step.at++]!;
      if (order[next]! < 0) walk.push(enter(next));
      else if (isOpen[next]) lower(step.node, order[next]!);
    }
  }

  function enter(node: number) {
    order[node] = lowest[node] = entered++;
    open.push(node);
    isOpen[node] = 1;
    return { node, next: node < formulas.length ? precedentsOf(node) : graph.inside(node), at: 0 };
  }

  function precedentsOf(number: number): readonly number[] {
    const cell = formulas[number]!;
    const but = TELLS_PLACES.test(cell.text) ? { number, area: cell.area } : undefined;
    return readsOf(cell).areas.flatMap(({ sheet, area }) => graph.within(sheet, area, but));
  }

  function lower(node: number, to: number): void {
    lowest[node] = Math.min(lowest[node]!, to);
  }

  function leave(node: number, next: readonly number[]): void {
    if (lowest[node] !== order[node]) return;
    const circle = open.splice(open.lastIndexOf(node));
    for (const each of circle) isOpen[each] = 0;
    if (circle.length === 1 && !next.includes(node)) return;
    for (const each of circle) if (each < formulas.length) circular.add(formulas[each]!);
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
