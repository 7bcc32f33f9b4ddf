import type { ReadyRange, ReadySheet } from "../../pane/port";

export interface StyledRange {
  readonly style: string;
  readonly range: ReadyRange;
}

/**
 * The cells of a sheet that look alike, as few rectangles: Excel is told how a range looks in one go,
 * and thousands of single cells would take it a minute.
 */
export function styledRectangles(cellData: ReadySheet["cellData"]): StyledRange[] {
  const runs = Object.entries(cellData).flatMap(([row, cells]) => rowRuns(Number(row), cells));
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
function rowRuns(row: number, cells: ReadySheet["cellData"][number]): StyledRange[] {
  const runs: StyledRange[] = [];
  const columns = Object.keys(cells).map(Number);
  for (const column of columns.sort((a, b) => a - b)) {
    const style = cells[column].s;
    if (style === undefined) continue;
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
