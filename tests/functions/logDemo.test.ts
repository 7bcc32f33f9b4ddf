import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { CALL_HEADINGS, reserveCalls } from "../../shared/demo/generate/reserveCalls";
import { LOG_HEADINGS, trainingLog } from "../../shared/demo/generate/trainingLog";
import { implementations } from "../../src/functions/implementations";
import { parseCsv } from "../../src/readySheets/csv";
import { elementAt } from "../present";

const SHEETS = join(import.meta.dirname, "../../shared/demo/sheets");

/** A file's rows as a sheet would hold them: numbers where there are numbers. */
function readCsv(file: string): (number | string)[][] {
  return parseCsv(readFileSync(join(SHEETS, file), "utf8")).map((row) =>
    row.map((cell) => (cell === "" || Number.isNaN(Number(cell)) ? cell : Number(cell))),
  );
}

const log = readCsv("log.csv");
const calls = readCsv("reserve-calls.csv");

/** The columns of these headings, header row included. */
function range(rows: (number | string)[][], ...headings: string[]): (number | string)[][] {
  const places = headings.map((heading) => elementAt(rows, 0).indexOf(heading));
  return rows.map((row) => places.map((place) => elementAt(row, place)));
}

test("the demo's logs are what the generator makes, the same every time", () => {
  expect(log).toEqual([LOG_HEADINGS, ...trainingLog()]);
  expect(calls).toEqual([CALL_HEADINGS, ...reserveCalls()]);
});

describe("the training log", () => {
  const columns = ["load, kg", "reps", "reserve", "sets"].map((heading) => range(log, heading));
  const summarise = (...by: string[]) => implementations.LOGSUMMARY(range(log, ...by), ...columns);
  const total = (rows: readonly (readonly unknown[])[], column: number) =>
    rows.reduce((sum, row) => sum + (row[column] as number), 0);

  test("is eleven weeks of eight rowers, of at least 800 sets", () => {
    const [headings, ...weeks] = summarise("week");
    expect(headings?.[0]).toBe("week");
    expect(weeks.map(([week]) => week)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect(summarise("lifter")).toHaveLength(1 + 8);
    expect(total(weeks, 1)).toBeGreaterThanOrEqual(800);
  });

  test("has sets without a load, sets without a reserve, and sessions that did not happen", () => {
    const pullUps = summarise("lift").find(([lift]) => lift === "Pull-up") ?? [];
    const [, sets, , volumeLoad, , , , , setsWithoutLoad] = pullUps;
    expect(volumeLoad).toBe(0);
    expect(setsWithoutLoad).toBe(sets);
    expect(range(log, "reserve").flat()).toContain("");
    expect(range(log, "reps").flat()).toContain("DNS");
  });

  test("shows every rower stronger in the squat at the end than at the start", () => {
    const squats = summarise("lift", "lifter", "week").filter(([lift]) => lift === "Back squat");
    for (const [lifter] of summarise("lifter").slice(1)) {
      const best = squats
        .filter((row) => row[1] === lifter)
        .map((row) => row[9])
        .filter((e1rm) => typeof e1rm === "number");
      expect(Math.max(...best.slice(-2))).toBeGreaterThan(elementAt(best, 0));
    }
  });
});

test("the reserve calls show a squad that learns: bias and misses shrink from week to week", () => {
  const table = implementations.RESERVECHECK(
    range(calls, "rep at call"),
    range(calls, "called reserve"),
    range(calls, "reps to failure"),
    range(calls, "lifter"),
    range(calls, "week"),
  );
  expect(table[0]).toEqual(["week", "n", "bias", "sd", "mean miss", "low", "high"]);
  const weeks = table.slice(1);
  const averageOf = (column: number, from: number, to: number) =>
    weeks.slice(from, to).reduce((sum, row) => sum + (row[column] as number), 0) / (to - from);
  for (const column of [2, 4]) {
    expect(averageOf(column, 7, 10)).toBeLessThan(averageOf(column, 0, 3) / 2);
  }
});
