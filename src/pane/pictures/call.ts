import { CellError, type Content } from "../../cells";
import { implementations } from "../../functions/implementations";

/** What a report says, by its labels. A value that does not exist for the data is not there. */
export type Report = ReadonlyMap<string, number | string>;

/** Calls a cell function, as a sheet would; an error in its only cell is thrown. */
export function call(id: string, ...args: unknown[]): Content[][] {
  const grid = implementations[id](...args);
  const [[first]] = grid;
  if (grid.length === 1 && grid[0].length === 1 && first instanceof CellError) throw first;
  return grid;
}

/** Calls a cell function for its report of labels and values. */
export function callReport(id: string, ...args: unknown[]): Report {
  const rows = call(id, ...args).flatMap(([label, value]): [string, number | string][] =>
    value instanceof CellError || value === "" || value === undefined
      ? []
      : [[String(label), value]],
  );
  return new Map(rows);
}

/** A number of a report, or `undefined` where it does not exist for the data. */
export function numberOf(report: Report, label: string): number | undefined {
  const value = report.get(label);
  return typeof value === "number" ? value : undefined;
}

/** An estimate with the ends of its interval. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** The interval between two labels of a report, where there is one. */
export function intervalOf(report: Report, low: string, high: string): Interval | undefined {
  const ends = { low: numberOf(report, low), high: numberOf(report, high) };
  return ends.low === undefined || ends.high === undefined
    ? undefined
    : { low: ends.low, high: ends.high };
}
