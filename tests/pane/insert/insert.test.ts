import { describe, expect, test } from "vitest";
import { implementations } from "../../../src/functions/implementations";
import { mixedColumns } from "../../../src/pane/formula/mixed";
import { narrowed } from "../../../src/pane/formula/narrowed";
import { callOf, formulaOf, type Typed } from "../../../src/pane/formula/call";
import { areaOf } from "../../../src/pane/formula/reference";
import { work } from "../../../src/pane/formula/work";
import { planInsertion } from "../../../src/pane/insert/plan";
import type { CellValue, Target } from "../../../src/pane/port";
import { cellAddress } from "../../../src/formula/address";
import { paneData } from "../../ourSheets";

const data = paneData();
const entryOf = (id: string) => data.catalogue.functions.find((entry) => entry.id === id)!;

/** A sheet called Log of these rows, from A1 on, as the port shows it. */
function sheetOf(rows: readonly (readonly CellValue[])[]) {
  const at = (row: number, column: number) => rows[row]?.[column] ?? null;
  const cells = (reference: string) => {
    const area = areaOf(reference)!;
    const length = Math.min(area.endRow, rows.length + 30) - area.startRow + 1;
    return Array.from({ length }, (_, down) =>
      Array.from({ length: area.endColumn - area.startColumn + 1 }, (_unused, right) => ({
        address: cellAddress(area.startRow + down, area.startColumn + right),
        value: at(area.startRow + down, area.startColumn + right),
      })),
    );
  };
  return {
    readRange: (reference: string) =>
      Promise.resolve(cells(reference).map((row) => row.map(({ value }) => value))),
    firstFilled: (reference: string) => {
      const filled = cells(reference)
        .flat()
        .find(({ value }) => value !== null && value !== "");
      return Promise.resolve(filled?.address);
    },
  };
}

async function plan(
  id: string,
  typed: Typed,
  at: string,
  rows: readonly (readonly CellValue[])[],
  filled = false,
) {
  const port = sheetOf(rows);
  const call = callOf(entryOf(id), typed);
  const target: Target = { sheet: "Log", address: at, filled, inTable: false };
  const worked = await work(call, port, implementations);
  return planInsertion(call, worked, target, { data, port });
}

const log = [
  ["lifter", "lift", "load, kg", "reps", "RIR"],
  ["Imke", "squat", 100, 5, 2],
  ["Rosa", "squat", 80, 5, 1],
  ["Nele", "squat", 90, 3, 0],
];
const ofLog = { load: "Log!C2:C4", reps: "Log!D2:D4", reserve: "Log!E2:E4" };

describe("a column of results", () => {
  test("goes beside its rows, under a heading with the loads' unit and in a fitting format", async () => {
    expect(await plan("E1RM", ofLog, "F2", log)).toEqual({
      says: "Each result goes beside its own row, in F2:F4, under “e1RM, kg”.",
      button: "Insert in F2",
      insertion: {
        sheet: "Log",
        address: "F2",
        formula: '=SPARE.E1RM(C2:C4, D2:D4, E2:E4&"")',
        headings: [{ address: "F1", text: "e1RM, kg" }],
        formats: [{ address: "F2:F4", format: "0.0" }],
        widths: { 5: 8 },
      },
    });
  });

  test.each(["F1", "A1", "C3"])(
    "starts level with its first row although %s is selected",
    async (at) => {
      expect(await plan("E1RM", ofLog, at, log, at !== "F1")).toMatchObject({
        button: "Insert in F2",
        insertion: { headings: [{ address: "F1" }] },
      });
    },
  );

  test("is refused where rows would not line up, in words, and offered the right place", async () => {
    const refused = await plan("E1RM", ofLog, "H5", log);
    expect(refused).toMatchObject({ button: "Insert in H2" });
    expect("says" in refused && refused.says).toMatch(
      /^From H5 on, each result would stand in another row/,
    );
  });

  test("covers nothing that is there already, and says what is in the way", async () => {
    const taken = log.map((row, index) => [...row, index === 2 ? "note" : null]);
    expect(await plan("E1RM", ofLog, "F2", taken)).toMatchObject({
      says: "F3 holds something. Each result goes beside its own row, in G2:G4, under “e1RM, kg”.",
      button: "Insert in G2",
    });
  });

  test("is never inserted for columns that start in different rows", async () => {
    const shifted = { load: "Log!C2:C3", reps: "Log!D3:D4" };
    expect(await plan("E1RM", shifted, "F2", log)).toEqual({
      refused:
        "Log!C2:C3 and Log!D3:D4 start in different rows: no result would stand beside its own row.",
    });
  });

  test("has a heading for each of its parts", async () => {
    expect(await plan("E1RMBAND", ofLog, "F2", log)).toMatchObject({
      insertion: {
        headings: [
          { address: "F1", text: "low" },
          { address: "G1", text: "estimate" },
          { address: "H1", text: "high" },
        ],
      },
    });
  });

  test("has no heading where none stands above its columns", async () => {
    const bare = log.slice(1);
    const typed = { load: "Log!C1:C3", reps: "Log!D1:D3" };
    expect(await plan("E1RM", typed, "F1", bare)).toMatchObject({
      button: "Insert in F1",
      insertion: { headings: [] },
    });
  });
});

describe("a table of results", () => {
  test("has bold headings, and shares in percent", async () => {
    expect(
      await plan("LOADCHART", { oneRepMax: "140", reps: "{5;3}", reserves: "{0;2}" }, "H1", log),
    ).toMatchObject({
      insertion: { address: "H1" },
    });
  });

  test("shows each value of a report in a format of its own", async () => {
    const typed = { before: "{100;110;120;90}", after: "{104;113;126;95}" };
    const made = await plan("PAIREDCHANGE", typed, "H1", log);
    const formats = "insertion" in made ? made.insertion.formats.map(({ format }) => format) : [];
    expect(formats).toContain('[<0.001]"<0.001";0.000');
  });

  test("goes to the right of what it would cover", async () => {
    const made = await plan(
      "PAIREDCHANGE",
      { before: "{1;2;4}", after: "{2;4;5}" },
      "C1",
      log,
      true,
    );
    expect(made).toMatchObject({ button: "Insert in G1" });
    expect("says" in made && made.says).toMatch(
      /^C1 holds something, which a table from C1 on would cover/,
    );
  });
});

describe("sets of several lifters", () => {
  const { parameters } = entryOf("STRENGTHTREND");
  const selection = {
    sheet: "Log",
    address: "A1:E4",
    values: log.map((row, index) =>
      index === 0 ? ["lifter", "date", "load", "reps", "RIR"] : row,
    ),
  };

  test("are seen where one lifter's trend is asked for", () => {
    expect(mixedColumns(parameters, selection, data.headings)).toEqual([
      { heading: "lifter", column: 0, reference: "Log!A2:A4", names: ["Imke", "Rosa", "Nele"] },
    ]);
    expect(mixedColumns(entryOf("E1RM").parameters, selection, data.headings)).toEqual([]);
    expect(mixedColumns(entryOf("SQUADTREND").parameters, selection, data.headings)).toEqual([]);
  });

  test("are cut down to the chosen one's, in the formula and in its preview", async () => {
    const call = narrowed(callOf(entryOf("FITCURVE"), ofLog), [
      { reference: "Log!A2:A4", is: "Rosa" },
    ]);
    expect(formulaOf(call, "Log")).toBe(
      '=SPARE.FITCURVE(FILTER(C2:C4, A2:A4="Rosa"), FILTER(D2:D4, A2:A4="Rosa"), FILTER(E2:E4, A2:A4="Rosa")&"")',
    );
    expect(await work(call, sheetOf(log), implementations)).toMatchObject({
      message: expect.stringContaining("found 1") as unknown,
    });
  });
});

test("columns are named only for functions that there are", () => {
  for (const id of Object.keys(data.results)) expect(entryOf(id)).toBeDefined();
});
