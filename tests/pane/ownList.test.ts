import { describe, expect, it } from "vitest";
import { ownList } from "../../src/pane/ownList";
import type { CellValues } from "../../src/pane/port";
import { paneData } from "../ourSheets";

const { headings } = paneData();

/** What a sheet makes of a selection, with nothing below it, or with something. */
const read = (kind: "log" | "maxima", values: CellValues, below?: string) => {
  const last = String.fromCharCode(65 + (values[0]?.length ?? 1));
  const selection = { sheet: "My log", address: `B3:${last}${2 + values.length}`, values };
  return ownList(kind, selection, headings, { firstFilled: () => Promise.resolve(below) });
};

const LOG: CellValues = [
  ["Date", "Athlete", "Exercise", "Weight (lb)", "reps", "RIR", "sets"],
  [46_000, "Ada", "Squat", 165, 5, 2, 3],
];

describe("a list of the coach's own", () => {
  it("is a log by its headings, in whatever words, with room below", async () => {
    expect(await read("log", LOG)).toEqual({
      by: "'My log'!$C$3:$D$1004",
      date: "'My log'!$B$3:$B$1004",
      lifter: "'My log'!$C$3:$C$1004",
      lift: "'My log'!$D$3:$D$1004",
      load: "'My log'!$E$3:$E$1004",
      reps: "'My log'!$F$3:$F$1004",
      reserve: "'My log'!$G$3:$G$1004",
      unit: "lb",
    });
  });

  it("ends where it was selected if something stands below it", async () => {
    expect(await read("log", LOG, "B40")).toMatchObject({ load: "'My log'!$E$3:$E$4" });
  });

  it("has lifter and lift side by side for the functions, wherever they stand", async () => {
    const swapped = LOG.map(([date, lifter, lift, ...rest]) => [date!, lift!, lifter!, ...rest]);
    expect(await read("log", swapped)).toMatchObject({
      by: "HSTACK('My log'!$D$3:$D$1004, 'My log'!$C$3:$C$1004)",
    });
  });

  it("is no log where a column is missing", async () => {
    expect(
      await read(
        "log",
        LOG.map((row) => row.slice(0, 5)),
      ),
    ).toBeUndefined();
    expect(await read("log", [["Ada", 100]])).toBeUndefined();
  });

  it("is maxima: the lifter and the lifts beside, but not what the lifter weighs", async () => {
    const maxima = [
      ["lifter", "body mass, kg", "Squat, kg", "Pull, kg", "notes"],
      ["Ada", 70, 100, 70, "left knee"],
      ["Noor", 68, null, 60, null],
    ];
    expect(await read("maxima", maxima)).toEqual({
      lifter: "'My log'!$B$4:$B$35",
      lifts: "'My log'!$D$3:$E$3",
      maxima: "'My log'!$D$4:$E$35",
      unit: "kg",
    });
    expect(await read("maxima", [["lifter"], ["Ada"]])).toBeUndefined();
  });
});
