import { describe, expect, test } from "vitest";
import { CellError, type Content } from "../../src/cells";
import { implementations } from "../../src/functions/implementations";
import { independentSummary, rowsOf } from "../core/log/independentSummary";
import { randomStream } from "../random";
import { elementAt, only } from "../present";
import { BLANKS } from "./blanks";
import { call, value } from "./catalogue";

/**
 * A coach's real log, 10,000 rows of it: a header, gaps between sessions, "BW", sets with no reserve or no number
 * of sets written down, sessions that did not happen. What it should come to is computed from the same log kept
 * clean, by a general-purpose data library.
 */
const ROWS = 10_000;
const HEADER = ["Lifter", "Lift", "Week", "Load", "Reps", "Reserve", "Sets"];

interface CleanRow {
  readonly lifter: string;
  readonly lift: string;
  readonly week: number;
  readonly load: number | null;
  readonly reps: number | null;
  readonly reserve: number | null;
  readonly sets: number | null;
}

/** The clean rows; `undefined` is an empty line. */
const CLEAN = inventRows();

function inventRows(): (CleanRow | undefined)[] {
  const random = randomStream();
  const upTo = (count: number) => Math.floor(random() * count);
  const oneOf = (names: readonly string[]) => elementAt(names, upTo(names.length));
  const lifters = ["Ines Duarte", "Marit Solberg", "Joana Prates", "Tuva Lind", "Oda Brekke"];
  const lifts = ["Back squat", "Deadlift", "Bench pull", "Pull-up"];
  return Array.from({ length: ROWS }, (_row, index) => {
    const lift = oneOf(lifts);
    const row = {
      lifter: oneOf(lifters),
      lift,
      week: 1 + Math.floor((10 * index) / ROWS),
      load: lift === "Pull-up" || random() < 0.02 ? null : 40 + 2.5 * upTo(50),
      reps: random() < 0.03 ? null : 1 + upTo(12),
      reserve: random() < 0.15 ? null : upTo(11) / 2,
      sets: random() < 0.25 ? null : 1 + upTo(5),
    };
    return random() < 0.05 ? undefined : row;
  });
}

/** The rows as cells: what was not recorded is a blank, or whatever the coach writes instead. */
function asCells(blank: unknown, textBlank: unknown): unknown[][] {
  return CLEAN.map((row, index) => {
    if (row === undefined) return [blank, blank, blank, blank, blank, textBlank, blank];
    const { lifter, lift, week, load, reps, reserve, sets } = row;
    // Names are typed by hand.
    const name = index % 7 === 0 && index > 50 ? `${lifter.toUpperCase()} ` : lifter;
    return [
      name,
      lift,
      week,
      load ?? (lift === "Pull-up" ? "BW" : blank),
      reps ?? (index % 2 === 0 ? "DNS" : blank),
      reserve === null ? textBlank : `${reserve}`.replace(".", index % 3 === 0 ? "," : "."),
      sets ?? blank,
    ];
  });
}

const summarise = (rows: readonly (readonly unknown[])[]) => {
  const column = (from: number, to = from + 1) => rows.map((row) => row.slice(from, to));
  return implementations.LOGSUMMARY(column(0, 3), column(3), column(4), column(5), column(6));
};

function expectedRows(): (number | string)[][] {
  const rows = CLEAN.filter((row) => row !== undefined);
  const column = <K extends keyof CleanRow>(key: K) => rows.map((row) => row[key]);
  return rowsOf(
    independentSummary({
      keys: { lifter: column("lifter"), lift: column("lift"), week: column("week") },
      load: column("load"),
      reps: column("reps"),
      reserve: column("reserve"),
      sets: column("sets"),
    }),
  );
}

function expectSame(actual: Content[][], expected: (number | string)[][]): void {
  expect(actual).toHaveLength(expected.length);
  const isSame = (cell: Content, wanted: number | string | undefined) =>
    typeof wanted === "number" && typeof cell === "number"
      ? Math.abs(cell - wanted) <= 1e-9 * Math.max(1, wanted)
      : `${cell as string}`.trim().toLowerCase() === `${wanted}`.toLowerCase();
  const wrong = actual.filter((row, at) =>
    row.some((cell, column) => !isSame(cell, expected[at]?.[column])),
  );
  expect(wrong).toEqual([]);
}

describe.each(BLANKS)("10,000 rows with blanks as $host passes them", ({ blank, textBlank }) => {
  const [headings, ...rows] = summarise([HEADER, ...asCells(blank, textBlank)]);

  test("come to what a general-purpose data library makes of the clean log", () => {
    expect(headings?.slice(0, 4)).toEqual(["Lifter", "Lift", "Week", "sets"]);
    expectSame(rows, expectedRows());
  });
});

describe("a log that grows", () => {
  const log = [HEADER, ...asCells("", "")];
  const before = summarise(log);

  test("does not change by empty rows below", () => {
    const empty = Array.from({ length: 5_000 }, () => HEADER.map(() => ""));
    expect(summarise([...log, ...empty])).toEqual(before);
  });

  test("changes in the key that a new row belongs to, and nowhere else", () => {
    const [lifter, lift, week, sets] = elementAt(before, 1);
    const after = summarise([...log, [lifter, lift, week, 100, 5, "1", 3]]);
    expect(after[1]?.[3]).toBe((sets as number) + 3);
    expect(after.slice(2)).toEqual(before.slice(2));
  });

  test("gets a new key at the end", () => {
    const after = summarise([...log, ["Sanna Holm", "Deadlift", 10, 100, 5, "", ""]]);
    expect(after.at(-1)).toEqual(["Sanna Holm", "Deadlift", 10, 1, 5, 500, 0, "", 100, "", 0, 1]);
  });
});

test("a date typed into reps, far down, is an error that names its row", () => {
  const log = [HEADER, ...asCells("", "")];
  log[9_876] = ["Tuva Lind", "Deadlift", 10, 120, 45992, "1", 3];
  const content = only(only(summarise(log)));
  expect(content).toBeInstanceOf(CellError);
  expect((content as CellError).message).toBe(
    "the 9877th row of reps is 45992, which looks like a date; expected a number of reps above 0",
  );
});

test("totals by lift add up to the totals of the whole log", () => {
  const cells = asCells("", "");
  const column = (at: number) => cells.map((row) => [row[at]]);
  const [load, reps, reserve, sets] = [3, 4, 5, 6].map(column);
  const total = (rows: Content[][]) => rows.reduce((sum, row) => sum + (row.at(-1) as number), 0);
  const byLift = call("VOLUMELOAD", load, reps, sets, column(1)).slice(1);
  expect(total(byLift)).toBe(value("VOLUMELOAD", load, reps, sets));
  const closeByLift = call("CLOSESETS", reps, reserve, sets, null, column(1)).slice(1);
  expect(total(closeByLift)).toBe(value("CLOSESETS", reps, reserve, sets));
});
