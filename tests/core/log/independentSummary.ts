import { table, type ColumnTable } from "arquero";

/** A log as columns of clean values: `null` where nothing is written down. */
export interface CleanLog {
  /** Key columns by heading. */
  readonly keys: Readonly<Record<string, readonly (number | string)[]>>;
  readonly load: readonly (number | null)[];
  readonly reps: readonly (number | null)[];
  readonly reserve: readonly (number | null)[];
  readonly sets: readonly (number | null)[];
}

/** Epley 1985, with a straight line between one rep and two; nothing past `maxReps` reps to failure. */
const E1RM = `d => d.load === null || d.reserve === null
    || d.reps + d.reserve < 1 || d.reps + d.reserve > maxReps ? null
  : d.reps + d.reserve >= 2 ? d.load * (1 + (d.reps + d.reserve) / 30)
  : d.load / (1 - (1 - 1 / (1 + 2 / 30)) * (d.reps + d.reserve - 1))`;

/** What `LOGSUMMARY` reports under each of its headings, in the library's own expressions. */
const MEASURES = {
  "total sets": "d => op.sum(d.sets)",
  "total reps": "d => op.sum(d.sets * d.reps)",
  "volume load": "d => op.sum(d.load === null ? 0 : d.sets * d.reps * d.load)",
  "close sets": "d => op.sum(d.reserve !== null && d.reserve <= within ? d.sets : 0)",
  "mean reserve":
    "d => op.sum(d.reserve === null ? 0 : d.sets * d.reserve) / op.sum(d.reserve === null ? 0 : d.sets)",
  "top load": "d => op.max(d.load)",
  "best e1RM": "d => op.max(d.e1rm)",
  "sets without load": "d => op.sum(d.load === null ? d.sets : 0)",
  "sets at reserve 0 or blank": "d => op.sum(d.reserve === null || d.reserve === 0 ? d.sets : 0)",
};

/**
 * The summary of a log by its keys as arquero, a general-purpose data library, computes it from the definitions
 * alone. It works on clean columns: no cell is read or checked.
 */
export function independentSummary(
  { keys, ...measures }: CleanLog,
  { within = 4, maxReps = 10 } = {},
): ColumnTable {
  return table({ ...keys, ...measures })
    .params({ within, maxReps })
    .filter("d => d.reps !== null")
    .derive({ sets: "d => d.sets === null ? 1 : d.sets", e1rm: E1RM })
    .groupby(...Object.keys(keys))
    .rollup(MEASURES);
}

/** Its rows: the keys, then the measures, "" where there is none. */
export function rowsOf(summary: ColumnTable): (number | string)[][] {
  const names = summary.columnNames();
  return summary.objects().map((row) =>
    names.map((name) => {
      const value = (row as Record<string, number | string | undefined>)[name];
      return value === undefined || Number.isNaN(value) ? "" : value;
    }),
  );
}
