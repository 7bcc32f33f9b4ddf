import type { Cells } from "./picture";

/** Days of one spring, as spreadsheets count them. */
const DAY = 46_000;

/** A small invented selection for each picture, by its id, to show what it draws before anything is selected. */
export const examples: Readonly<Record<string, Cells>> = {
  "strength-trend": [
    ["date", "one-rep max, kg", "low", "high"],
    [DAY, 121.4, 112.6, 130.9],
    [DAY + 7, 122.8, 115.3, 130.8],
    [DAY + 14, 125.1, 118.5, 132.1],
    [DAY + 21, 126, 119.8, 132.6],
    [DAY + 28, 128.7, 122.3, 135.4],
    [DAY + 35, 130.2, 123, 137.8],
  ],
  "weekly-load": [
    ["week", "sets", "volume load", "close sets"],
    [1, 42, 9800, 12],
    [2, 46, 10900, 18],
    [3, 50, 11600, 25],
    [4, 24, 5200, 4],
    [5, 48, 11900, 21],
    [6, 52, 12700, 29],
  ],
  "reserve-agreement": [
    ["rep at call", "called reserve", "reps to failure"],
    [4, 3, 9],
    [5, 2, 8],
    [6, 2, 8],
    [3, 4, 9],
    [5, 3, 8],
    [7, 1, 9],
    [4, 4, 10],
    [6, 3, 9],
  ],
  "athlete-changes": [
    ["lifter", "before, kg", "after, kg", "typical error"],
    ["Ada Lund", 95, 102, 1.6],
    ["Noor Haddad", 80, 82, null],
    ["Tomas Reyes", 140, 149, null],
    ["Iris Blom", 72.5, 71, null],
    ["Jonas Eke", 131, 138.5, null],
  ],
  "group-changes": [
    ["crew", "before, kg", "after, kg"],
    ["Heron", 95, 102],
    ["Heron", 110, 115],
    ["Heron", 140, 150],
    ["Heron", 128, 134],
    ["Otter", 92, 95],
    ["Otter", 105, 104],
    ["Otter", 137, 143],
    ["Otter", 131, 133],
  ],
  forest: [
    ["study", "effect size", "SE"],
    ["Study 1", 0.41, 0.2],
    ["Study 2", 0.22, 0.14],
    ["Study 3", -0.08, 0.24],
    ["Study 4", 0.3, 0.17],
  ],
  "dose-response": [
    ["sets a week", "effect size", "SE"],
    [4, -0.05, 0.16],
    [6, 0.12, 0.18],
    [9, 0.2, 0.17],
    [12, 0.44, 0.2],
  ],
};
