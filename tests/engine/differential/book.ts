import type { CellValue } from "../../../src/xlsx/model";

/**
 * The workbook that the formulas beside this file read: a squad's land training, invented, with the cells that
 * spreadsheets disagree over: blanks, zeros, numbers as text, empty text, truth values and errors.
 */

type Cell = number | string | boolean | null | Formula;
/** A formula, and what a program saves for it. */
interface Formula {
  readonly formula: string;
  readonly saved: CellValue;
}
export type Rows = readonly (readonly Cell[])[];

const empty: Cell = { formula: '""', saved: "" };

/** The table `Sets`: one set a row. Dates are 2 to 13 March 2026. */
const log: Rows = [
  ["Date", "Athlete", "Lift", "Load", "Reps", "Reserve", "Note"],
  [46083, "Ada", "Squat", 100, 5, 2, "easy"],
  [46083, "Ada", "Squat", 105, 5, 0, "to failure"],
  [46083, "Bea", "Squat", 80, 8, 3, null],
  [46083, "Bea", "Bench pull", 55, 6, 1, "slow*"],
  [46085, "Ada", "Bench pull", 62.5, 6, 2, null],
  [46085, "Cleo", "Squat", 92.5, 3, null, "late"],
  [46085, "Cleo", "Deadlift", 120, 4, 1, "belt"],
  [46087, "Ada", "Deadlift", 140, 3, 0, "grip?"],
  [46087, "Bea", "Deadlift", 110, 5, 2, null],
  [46090, "Bea", "Squat", 82.5, 8, 2, "~8"],
  [46090, "Dora", "Squat", 60, 10, 4, "new"],
  [46092, "Dora", "Bench pull", 40, 10, 3, null],
  [46092, "Cleo", "Squat", 95, 3, 1, "Ada's bar"],
  [46094, "Ada", "Squat", 107.5, 5, 1, "easy"],
];

/** Odd cells, one kind a column, and some numbers to work with. */
const data: Rows = [
  ["Mixed", "Scores", "Others", "Words", "Sorted", "Grade", "When", "Group"],
  [0, 12.5, 3, "  two  words ", 0, "low", 45322.75, "x"],
  [null, 7, 1, "Ärger", 10, "fair", 45350.270_833_333_3, "y"],
  [empty, 9.25, 4, "ada@club.example", 20, "good", 46022, "x"],
  ["0", -3, 1, "10", 30, "high", 0.5, "y"],
  [false, 12.5, 5, "2026-03-02", 40, "top", 1.25, "z"],
  [1, 0, 9, "TRUE", 50, "max", 45291.999_988_425_9, "x"],
  ["x", 4, 2, "12%", 60, "over", 60, null],
  [true, 8, 6, "1.5e3", 70, "far", 61, "Z"],
  [{ formula: "1/0", saved: "#DIV/0!" }, 7, 5, "squat squat", 80, "end", 46082, "y"],
  [-2.5, 15.75, 3, 'O\'Neil "Bo"', 90, "out", 44926, "x"],
];

/** A week on its own sheet: day, load, minutes. */
const week = (start: number, loads: readonly Cell[]): Rows => [
  ["Day", "Load", "Minutes"],
  ...loads.map((load, day): readonly Cell[] => [start + day, load, 30 + 10 * day]),
];

export const sheets: Readonly<Record<string, Rows>> = {
  Log: log,
  Data: data,
  W1: week(46083, [400, 0, 350, null, 420]),
  W2: week(46090, [450, 100, 380, "rest", 300]),
  W3: week(46097, [500, 120, null, 60, 0]),
  "Rest week": week(46104, [100, 90, 80, 70, 60]),
};

export const table = { name: "Sets", sheet: "Log", area: "A1:G15" };

export const names: Readonly<Record<string, string>> = {
  bodyMass: "Data!$B$2",
  loads: "Log!$D$2:$D$15",
  reps: "Log!$E$2:$E$15",
  step: "2.5",
  title: '"Land training"',
  heaviest: "MAX(loads)",
  twice: "heaviest*2",
};
