import { cellAddress } from "../formula/address";
import { fromFile } from "../formula/future";
import type { CopiedCell, Copy, FrozenCell } from "../recalculate/copies/copyWith";
import type { OutsideFormula } from "../recalculate/copies/outside/place";
import { joined, list, placeOf, sectionsOf, type Findings } from "./report";

/** What became in a copy of all that needs the add-in, as `--json` prints it beside the rest. */
export interface CopyReport {
  /** The cells that go on calculating, each with its formula in the copy. */
  readonly live: readonly (Entry & { readonly copy: string })[];
  /** The cells that are values now. */
  readonly frozen: readonly (Entry & { readonly reason: string })[];
  /** The cells that still ask for the add-in, because they had to keep an old value. */
  readonly kept: readonly Entry[];
  /** In how many cells each function stays live, and in how many not. */
  readonly functions: readonly FunctionCount[];
  /** Formulas that stand in no cell: what they are in the copy, or why they are gone. */
  readonly outside: readonly OutsideEntry[];
}

interface Entry {
  readonly sheet: string;
  readonly cell: string;
  readonly formula: string;
  readonly functions: readonly string[];
}

interface FunctionCount {
  readonly function: string;
  readonly live: number;
  readonly frozen: number;
  readonly kept: number;
}

interface OutsideEntry {
  readonly sheet: string | null;
  readonly place: string;
  readonly of: string;
  readonly formula: string;
  readonly functions: readonly string[];
  readonly copy: string | null;
  readonly reason: string | null;
}

export function reportOnCopy({ live, frozen, kept, outside }: Copy): CopyReport {
  return {
    live: live.map((cell) => ({ ...entryOf(cell), copy: shown(cell.text) })),
    frozen: frozen.map((cell) => ({ ...entryOf(cell), reason: cell.reason })),
    kept: kept.map(entryOf),
    functions: countByFunction({ live, frozen, kept }),
    outside: outside.map(({ sheet = null, place, of, formula, functions, became }) => ({
      ...{ sheet, place, of, formula: shown(formula), functions },
      copy: "text" in became ? shown(became.text) : null,
      reason: "lost" in became ? became.lost : null,
    })),
  };
}

const shown = (text: string) => `=${fromFile(text)}`;

function entryOf({ cell, functions }: Omit<CopiedCell, "text">): Entry {
  const { sheet, row, column, text } = cell;
  return { sheet: sheet.name, cell: cellAddress(row, column), formula: shown(text), functions };
}

function countByFunction(cells: Pick<Copy, "live" | "frozen" | "kept">): FunctionCount[] {
  const counts = new Map<string, FunctionCount>();
  for (const kind of ["live", "frozen", "kept"] as const) {
    for (const { functions } of cells[kind]) {
      for (const id of functions) {
        const count = counts.get(id) ?? { function: id, live: 0, frozen: 0, kept: 0 };
        counts.set(id, { ...count, [kind]: count[kind] + 1 });
      }
    }
  }
  return [...counts.values()].sort((a, b) => (a.function < b.function ? -1 : 1));
}

/** The report on a copy for a person: by function, and then what does not calculate any more. */
export function writeCopyReport(findings: Findings, copy: Copy, dryRun = false): string {
  const { counts, left, failed, end } = sectionsOf(findings, dryRun);
  const rewritten = copy.outside.filter(({ became }) => "text" in became);
  const removed = copy.outside.filter(({ became }) => "lost" in became);
  return joined([
    counts,
    list("By function", countByFunction(copy), writeCount),
    list("Values now", inRuns(copy.frozen), ({ first, last, reason }) => [
      placeOf(first.sheet.name, rangeOf(first, last)),
      reason,
    ]),
    list("Still asking for the add-in, with an old value", copy.kept, ({ cell, functions }) => [
      placeOf(cell.sheet.name, cellAddress(cell.row, cell.column)),
      functions.join(", "),
    ]),
    list("Rewritten outside cells", rewritten, writeOutside),
    list("Removed outside cells", removed, writeOutside),
    left,
    failed,
    end,
  ]);
}

function writeCount({ function: id, live, frozen, kept }: FunctionCount): string[] {
  const parts = [
    live > 0 ? `${live} live` : "",
    frozen > 0 ? `${frozen} now ${frozen === 1 ? "a value" : "values"}` : "",
    kept > 0 ? `${kept} left` : "",
  ];
  return [id, parts.filter((part) => part !== "").join(", ")];
}

function writeOutside({ sheet, place, of, functions }: OutsideFormula): string[] {
  const where = sheet === undefined ? place : placeOf(sheet, place);
  return [where, of, functions.join(", ")];
}

interface FrozenRun {
  readonly first: FrozenCell["cell"];
  last: FrozenCell["cell"];
  readonly reason: string;
}

/** Cells below one another that became values for one reason. */
function inRuns(frozen: readonly FrozenCell[]): FrozenRun[] {
  const runs: FrozenRun[] = [];
  const open = new Map<string, FrozenRun>();
  for (const { cell, reason } of frozen) {
    const column = `${cell.sheet.position} ${cell.column} ${reason}`;
    const run = open.get(column);
    if (run?.last.row === cell.row - 1) run.last = cell;
    else {
      const fresh = { first: cell, last: cell, reason };
      open.set(column, fresh);
      runs.push(fresh);
    }
  }
  return runs;
}

function rangeOf(first: FrozenCell["cell"], last: FrozenCell["cell"]): string {
  const start = cellAddress(first.row, first.column);
  return first === last ? start : `${start}:${cellAddress(last.row, last.column)}`;
}
