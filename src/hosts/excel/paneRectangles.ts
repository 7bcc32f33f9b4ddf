import type { Area } from "../../formula/address";
import type { ReadyCells } from "../../readySheets";

export interface StyledRange {
  readonly style: string;
  readonly range: Area;
}

/**
 * The cells of a sheet that look alike, as few rectangles: Excel is told how a range looks in one go,
 * and thousands of single cells would take it a minute.
 */
export function styledRectangles(cells: ReadyCells): StyledRange[] {
  const runs = Object.entries(cells).flatMap(([row, ofRow]) => rowRuns(Number(row), ofRow));
  const open = new Map<string, StyledRange>();
  const done: StyledRange[] = [];
  for (const run of runs.sort((a, b) => a.range.startRow - b.range.startRow)) {
    const key = `${run.style} ${run.range.startColumn} ${run.range.endColumn}`;
    const above = open.get(key);
    if (above?.range.endRow === run.range.startRow - 1) {
      open.set(key, { ...above, range: { ...above.range, endRow: run.range.endRow } });
    } else {
      if (above) done.push(above);
      open.set(key, run);
    }
  }
  return [...done, ...open.values()];
}

/** Neighbours of one row that look alike. */
function rowRuns(row: number, cells: ReadyCells[number]): StyledRange[] {
  const runs: StyledRange[] = [];
  const inOrder = Object.entries(cells).map(([column, cell]) => [Number(column), cell] as const);
  for (const [column, { style }] of inOrder.sort(([a], [b]) => a - b)) {
    const last = runs.at(-1);
    if (last?.style === style && last.range.endColumn === column - 1) {
      runs[runs.length - 1] = { style, range: { ...last.range, endColumn: column } };
    } else {
      const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
      runs.push({ style, range });
    }
  }
  return runs;
}
