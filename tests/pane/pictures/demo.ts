import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parseCsv } from "../../../src/readySheets/csv";
import { ROOT } from "../../../src/tools/paths";
import { elementAt } from "../../present";

/** The invented squad's own numbers, as a selection of its sheets would give them. */

const sheets = join(ROOT, "shared", "demo", "sheets");

type Cell = string | number | null;

const DAY_ZERO = Date.UTC(1899, 11, 30);

function toCell(text: string): Cell {
  if (text === "") return null;
  if (/^\d{4}-\d{2}-\d{2}$/.test(text)) return (Date.parse(text) - DAY_ZERO) / 86_400_000;
  return Number.isNaN(Number(text)) ? text : Number(text);
}

function readCsv(name: string): Cell[][] {
  return parseCsv(readFileSync(join(sheets, name), "utf8")).map((row) => row.map(toCell));
}

/** The training log, with its headings. */
export const log = readCsv("log.csv");

/** The calls of reserve, with their headings. */
export const reserveCalls = readCsv("reserve-calls.csv");

/** One lifter's sets of one lift, under the headings date, load, reps, reserve. */
export function setsOf(lifter: string, lift: string): Cell[][] {
  const [, ...rows] = log;
  const own = rows.filter((row) => row[2] === lifter && row[3] === lift);
  return [
    ["date", "load, kg", "reps", "reserve"],
    ...own.map((row) => [0, 4, 5, 6].map((at) => elementAt(row, at))),
  ];
}

/** A column of the log, with its heading. */
export const logColumn = (at: number) => log.map((row) => [row[at]]);

interface TestDay {
  readonly cells: { readonly B7: readonly (readonly Cell[])[] };
}

const testDay = JSON.parse(readFileSync(join(sheets, "test-day.json"), "utf8")) as TestDay;

/** Rower, crew, squat first test, squat before, squat after, of the squad's test day. */
export const squats = testDay.cells.B7.map((row) => ({
  rower: row[0],
  crew: row[1],
  firstTest: row[4],
  before: row[5],
  after: row[8],
}));
