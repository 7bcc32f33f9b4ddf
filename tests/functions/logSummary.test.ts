import { describe, expect, test } from "vitest";
import type { Content } from "../../src/cells";
import { implementations } from "../../src/functions/implementations";
import { only } from "../present";
import { BLANKS } from "./blanks";
import { messageOf } from "./catalogue";

const { LOGSUMMARY } = implementations;

const HEADINGS = [
  "sets",
  "reps",
  "volume load",
  "close sets",
  "mean reserve",
  "top load",
  "best e1RM",
  "sets without load",
  "sets at reserve 0 or blank",
];

/** Columns of cells from rows of cells, some columns of the rows an argument. */
const columns = (rows: readonly (readonly unknown[])[], from: number, to = from + 1) =>
  rows.map((row) => row.slice(from, to));

/** Lifter, lift, load, reps, reserve, sets. */
const LOG = [
  ["Lifter", "Lift", "Load", "Reps", "Reserve", "Sets"],
  ["Ines", "Squat", 100, 5, 2, 3],
  ["Marit", "Squat", 90, 5, "", 2],
  ["ines ", "squat", 105, 3, 1, ""],
  ["Ines", "Pull-up", "BW", 8, 2, 3],
  ["Marit", "Squat", "DNS", "DNS", "", ""],
  ["", "", "", "", "", ""],
];

const summarise = (log: readonly (readonly unknown[])[], ...settings: unknown[]) =>
  LOGSUMMARY(
    columns(log, 0, 2),
    columns(log, 2),
    columns(log, 3),
    columns(log, 4),
    columns(log, 5),
    ...settings,
  );

describe("keys", () => {
  test("come back under their own headings, untouched, in order of first appearance", () => {
    const result = summarise(LOG);
    expect(result[0]).toEqual(["Lifter", "Lift", ...HEADINGS]);
    expect(result.slice(1).map((row) => row.slice(0, 2))).toEqual([
      ["Ines", "Squat"],
      ["Marit", "Squat"],
      ["Ines", "Pull-up"],
    ]);
  });

  test("are headed by, where the log has no header row", () => {
    expect(summarise(LOG.slice(1))[0]?.slice(0, 3)).toEqual(["by", "by", "sets"]);
  });

  test("may be numbers, and one column is enough", () => {
    const result = LOGSUMMARY([[2], [1], [2]], [[50], [50], [60]], [[5], [5], [5]]);
    expect(result.slice(1).map(([week, sets]) => [week, sets])).toEqual([
      [2, 2],
      [1, 1],
    ]);
  });

  test("may be one label for all rows, or none", () => {
    const [load, reps] = [
      [[50], [60]],
      [[5], [5]],
    ];
    expect(LOGSUMMARY("Ines", load, reps)[1]?.slice(0, 2)).toEqual(["Ines", 2]);
    expect(LOGSUMMARY(null, load, reps)[1]?.slice(0, 2)).toEqual(["", 2]);
  });
});

test("a real log: a set with no load or no reserve is counted, and its kind is told", () => {
  const [, squats, marit, pullUps] = summarise(LOG).map((row) => row.slice(2));
  // e1RM after Epley 1985: 100 x (1 + 7/30) is more than 105 x (1 + 4/30).
  expect(squats?.map(rounded)).toEqual([4, 18, 1815, 4, 1.75, 105, 123.3333, 0, 0]);
  expect(marit).toEqual([2, 10, 900, 0, "", 90, "", 0, 2]);
  expect(pullUps).toEqual([3, 24, 0, 3, 2, "", "", 3, 0]);
});

const rounded = (content: Content) =>
  typeof content === "number" ? Number(content.toFixed(4)) : content;

describe("settings", () => {
  const log = [["Ines", "Squat", 100, 12, 2, 2]];

  test("within 0 counts sets to failure alone; blank on the web or omitted, it is 4", () => {
    const closeWith = (within: unknown) => summarise(log, within)[1]?.[5];
    expect([0, 2, null, undefined, ""].map(closeWith)).toEqual([0, 2, 2, 2, 2]);
  });

  test("maxReps lets in sets with more reps to failure; 0 is the usual 10", () => {
    const bestWith = (maxReps: unknown) => summarise(log, null, maxReps)[1]?.[8];
    expect(bestWith(0)).toBe("");
    expect(bestWith(14)).toBeCloseTo(100 * (1 + 14 / 30), 9);
  });

  test("the equation may be the lifter's own constant", () => {
    // f = 1 / (1 + (t - 1) / c) with t = 14 and c = 26.
    expect(summarise(log, null, 14, 26)[1]?.[8]).toBeCloseTo(150, 9);
  });

  test("an unknown equation is an error that lists them", () => {
    expect(messageOf(summarise(log, null, null, "best"))).toContain('"epley"');
  });
});

describe("what nobody should drop unseen is an error naming its row", () => {
  const withRow = (row: readonly unknown[]) => messageOf(summarise([...LOG, row]));

  test.each([
    [["Ines", "Squat", "80kg", 5, 2, 1], '#VALUE! the 8th row of load is text, "80kg"'],
    [
      ["Ines", "Squat", 80, 45992, 2, 1],
      "#VALUE! the 8th row of reps is 45992, which looks like a date",
    ],
    [
      ["Ines", "Squat", 80, 5, 45992, 1],
      "#VALUE! the 8th row of reserve is 45992, which looks like",
    ],
    [["Ines", "Squat", 80, 5, -1, 1], "#VALUE! the 8th row of reserve is -1"],
    [["Ines", "Squat", 80, 5, 2, "2-3"], '#VALUE! the 8th row of sets is text, "2-3"'],
    [["Ines", "Squat", "#REF!", 5, 2, 1], "#VALUE! the 8th row of load holds #REF!"],
    [["Ines", "#N/A", 80, 5, 2, 1], "#VALUE! the 8th row of by holds #N/A"],
  ])("%j", (row, message) => {
    expect(withRow(row)).toContain(message);
  });
});

describe.each(BLANKS)("a blank as $host passes it", ({ blank, textBlank }) => {
  const log = [
    ["Ines", "Squat", 100, 5, 2, 3],
    ["Ines", "Squat", 100, 5, textBlank, blank],
    ["Ines", "Squat", blank, 8, 0, 2],
    ["Ines", "Squat", 100, blank, textBlank, blank],
    [blank, blank, blank, blank, textBlank, blank],
  ];

  test("is one set, no load, no reserve, or no row, by its column", () => {
    const row = only(summarise(log).slice(1));
    // Sets 3 + 1 + 2; reps 15 + 5 + 16; close sets 3 + 2; mean reserve (3 x 2 + 2 x 0) / 5.
    expect(row.slice(2, 8)).toEqual([6, 36, 2000, 5, 1.2, 100]);
    expect(row.slice(9)).toEqual([2, 3]);
  });
});

test("a reserve passed as it stands on the desktop reads blanks as 0, and the last column shows it", () => {
  const log = [
    ["Ines", "Squat", 100, 5, 2, 3],
    ["Ines", "Squat", 100, 5, 0, 2],
  ];
  expect(summarise(log)[1]?.at(-1)).toBe(2);
});

test("a reserve spelled as text counts as the number it is", () => {
  const asText = LOG.map((row) => row.map((cell, at) => (at === 4 ? `${cell}` : cell)));
  expect(summarise(asText)).toEqual(summarise(LOG));
});

test("rows may lie across instead of down", () => {
  const across = LOGSUMMARY([["a", "b"]], [[100, 60]], [[5, 8]], [[2, 3]], [[3, 2]]);
  expect(across).toEqual(
    LOGSUMMARY([["a"], ["b"]], [[100], [60]], [[5], [8]], [[2], [3]], [[3], [2]]),
  );
});

test("columns of different length are an error that names both", () => {
  expect(messageOf(LOGSUMMARY([["a"], ["b"]], [[1], [2]], [[5], [5], [5]]))).toContain(
    "load has 2 rows and reps has 3 rows",
  );
});

test("a key is given back as it is, the largest number that there is as well", () => {
  const largest = 1.7976931348623157e308;
  const summary = LOGSUMMARY([["lift"], [largest]], [["load"], [100]], [["reps"], [5]]);
  expect(summary[1]?.[0]).toBe(largest);
});
