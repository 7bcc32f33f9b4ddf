import { performance } from "node:perf_hooks";
import { seededRandom } from "../../src/core/statistics/seededRandom";
import { implementations } from "../../src/functions/implementations";
import { independentSummary, rowsOf, type CleanLog } from "../core/log/independentSummary";
import { cellAt, elementAt, named } from "../present";
import { median } from "./median";

/**
 * How fast a whole log is summed up by six keys, beside the same summary by arquero, a general-purpose data
 * library. Ours starts from cells as a sheet hands them over and checks every one of them. arquero is timed twice:
 * from the same cells, turned into columns without a check, and from columns that are there already.
 *
 * `npx tsx -e 'import("./tests/bench/log").then((m) => m.benchLog())'` runs this alone.
 */
export function benchLog(): void {
  const shown = (rowsASecond: number) => Math.round(rowsASecond).toLocaleString("en");
  const results = [1_000, 10_000, 100_000].map((rows) => ({ rows, speed: race(rows) }));
  console.log("LOGSUMMARY by six keys, rows a second (median of runs in turns)");
  console.table(
    Object.fromEntries(
      results.map(({ rows, speed }) => [
        `${rows.toLocaleString("en")} rows`,
        {
          LOGSUMMARY: shown(speed.ours),
          "arquero, same cells": shown(speed.fromCells),
          "arquero, columns ready": shown(speed.fromColumns),
          "times as fast, same cells": Number((speed.ours / speed.fromCells).toFixed(2)),
          "times as fast, columns ready": Number((speed.ours / speed.fromColumns).toFixed(2)),
        },
      ]),
    ),
  );
}

/** Rows a second of each contender on one log. */
export interface Race {
  readonly ours: number;
  readonly fromCells: number;
  readonly fromColumns: number;
}

/** Races the two on one log, after checking that they agree on every cell of the summary. */
export function race(rows: number): Race {
  const log = inventLog(rows);
  const cells = asCells(log);
  const ours = () => implementations.LOGSUMMARY(...cells);
  const fromCells = () => rowsOf(independentSummary(asColumns(cells)));
  const fromColumns = () => rowsOf(independentSummary(log));
  requireSame(ours().slice(1) as (number | string)[][], fromCells());
  const timed = { ours: timer(ours), cells: timer(fromCells), columns: timer(fromColumns) };
  runInTurns(Object.values(timed));
  const speed = ({ seconds }: Timer) => rows / median(seconds);
  return {
    ours: speed(timed.ours),
    fromCells: speed(timed.cells),
    fromColumns: speed(timed.columns),
  };
}

const KEYS = ["squad", "lifter", "block", "week", "day", "lift"];

/** A seeded log as a club keeps it: session by session, lifter by lifter, lift by lift, four rows of sets each. */
function inventLog(rows: number): CleanLog {
  const random = seededRandom(rows);
  const upTo = (count: number) => Math.floor(random() * count);
  const column = <T>(value: (row: number) => T): T[] =>
    Array.from({ length: rows }, (_row, row) => value(row));
  const inTurn =
    (rowsEach: number, words: readonly string[]) =>
    (row: number): string =>
      elementAt(words, Math.floor(row / rowsEach) % words.length);
  const lifters = Array.from({ length: 20 }, (_lifter, index) => `Rower ${index + 1}`);
  return {
    keys: {
      squad: column(inTurn(160, ["Women", "Men"])),
      lifter: column(inTurn(16, lifters)),
      block: column(inTurn(320 * 3 * 12, ["Base", "Build", "Peak", "Race"])),
      week: column((row) => (Math.floor(row / (320 * 3)) % 12) + 1),
      day: column(inTurn(320, ["Mon", "Wed", "Fri"])),
      lift: column(inTurn(4, ["Squat", "Deadlift", "Bench pull", "Press"])),
    },
    load: column(() => (random() < 0.05 ? null : 40 + 2.5 * upTo(50))),
    reps: column(() => 1 + upTo(12)),
    reserve: column(() => (random() < 0.1 ? null : upTo(6))),
    sets: column(() => (random() < 0.2 ? null : 1 + upTo(4))),
  };
}

type Range = unknown[][];
type LogCells = [by: Range, load: Range, reps: Range, reserve: Range, sets: Range];

/** The log as a sheet hands it over: a range an argument, "BW" and blanks where there is no number. */
function asCells({ keys, load, reps, reserve, sets }: CleanLog): LogCells {
  const by = reps.map((_reps, row) => KEYS.map((key) => elementAt(named(keys, key), row)));
  const range = (column: readonly (number | null)[], blank: string) =>
    column.map((value) => [value ?? blank]);
  return [by, range(load, "BW"), range(reps, ""), range(reserve, ""), range(sets, "")];
}

/** Cells as clean columns, taking every number for right and everything else for a blank. */
function asColumns([by, load, reps, reserve, sets]: LogCells): CleanLog {
  const numbers = (range: Range) => range.map(([cell]) => (typeof cell === "number" ? cell : null));
  return {
    keys: Object.fromEntries(
      KEYS.map((key, column) => [key, by.map((row) => row[column] as number | string)]),
    ),
    load: numbers(load),
    reps: numbers(reps),
    reserve: numbers(reserve),
    sets: numbers(sets),
  };
}

function requireSame(ours: (number | string)[][], theirs: (number | string)[][]): void {
  const same =
    ours.length === theirs.length &&
    ours.every((row, at) => row.every((cell, column) => close(cell, cellAt(theirs, at, column))));
  if (!same) throw new Error("the two summaries differ");
}

const close = (a: number | string, b: number | string) =>
  typeof a === "number" && typeof b === "number"
    ? Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b))
    : a === b;

const MOST_RUNS = 40;
const MOST_SECONDS = 6;

/** A task, and how long each run of it took. */
interface Timer {
  readonly seconds: number[];
  run(): void;
}

function timer(task: () => unknown): Timer {
  const seconds: number[] = [];
  return {
    seconds,
    run() {
      const start = performance.now();
      task();
      seconds.push((performance.now() - start) / 1000);
    },
  };
}

/** Runs tasks in turns, so that none has the machine at a better moment. */
function runInTurns(timers: readonly Timer[]): void {
  const end = performance.now() + 1000 * MOST_SECONDS;
  for (let run = 0; run < MOST_RUNS && performance.now() < end; run++) {
    for (const one of timers) one.run();
  }
}
