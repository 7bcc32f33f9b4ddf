import { describe, expect, test } from "vitest";
import headings from "../../../shared/pane/headings.json";
import { readCatalogue } from "../../../src/tools/catalogue";
import { implementations } from "../../../src/functions/implementations";
import { readArgument } from "../../../src/pane/formula/argument";
import { callOf, formulaOf, missing, typedIn, type Typed } from "../../../src/pane/formula/call";
import { dealColumns } from "../../../src/pane/formula/columns";
import { narrowed } from "../../../src/pane/formula/narrowed";
import { columnOf, isReference, partsOf, referenceTo } from "../../../src/pane/formula/reference";
import { inRowsOf } from "../../../src/pane/formula/sheetRows";
import { work } from "../../../src/pane/formula/work";
import type { CellValues } from "../../../src/pane/port";

const { functions } = readCatalogue();
const entryOf = (id: string) => functions.find((entry) => entry.id === id)!;
const formula = (id: string, typed: Typed, sheet = "Start") =>
  formulaOf(callOf(entryOf(id), typed), sheet);

describe("a formula from what was typed", () => {
  test("leaves the end open and a place in the middle empty", () => {
    expect(formula("LOADFOR", { oneRepMax: "140", reps: "5" })).toBe("=SPARE.LOADFOR(140, 5)");
    expect(formula("LOADFOR", { oneRepMax: "140", reps: "5", increment: "2.5" })).toBe(
      "=SPARE.LOADFOR(140, 5, , 2.5)",
    );
    expect(formula("PERCENTCHART", {})).toBe("=SPARE.PERCENTCHART()");
  });

  test("takes numbers as coaches write them", () => {
    const exponent = (text: string) =>
      formula("RELATIVESTRENGTH", { load: "180", bodyMass: "82,5", exponent: text });
    expect(exponent("2/3")).toBe("=SPARE.RELATIVESTRENGTH(180, 82.5, 2/3)");
    expect(formula("MDC", { typicalError: "2.10", confidence: "90%" })).toBe(
      "=SPARE.MDC(2.1, 0.9)",
    );
  });

  test("puts words in quotes, and doubles the quotes inside", () => {
    expect(formula("E1RM", { load: "100", reps: "5", equation: "epley" })).toBe(
      '=SPARE.E1RM(100, 5, , "epley")',
    );
    expect(readArgument('6" box')).toMatchObject({ kind: "value", text: '"6"" box"' });
  });

  test("keeps blanks blank where a reserve of 0 is something else, and only there", () => {
    const typed = { load: "B2:B20", reps: "C2:C20", reserve: "D2:D20" };
    expect(formula("E1RM", typed)).toBe('=SPARE.E1RM(B2:B20, C2:C20, D2:D20&"")');
    expect(formula("E1RM", { ...typed, reserve: 'D2:D20 & ""' })).toBe(
      '=SPARE.E1RM(B2:B20, C2:C20, D2:D20&"")',
    );
    expect(formula("E1RM", { ...typed, reserve: "2" })).toBe("=SPARE.E1RM(B2:B20, C2:C20, 2)");
    const check = { repAtCall: "B2:B9", calledReserve: "C2:C9", repsToFailure: "D2:D9" };
    expect(formula("RESERVECHECK", check)).toBe('=SPARE.RESERVECHECK(B2:B9, C2:C9&"", D2:D9)');
    expect(formula("STRENGTHTREND", { date: "A2:A9", reserveSd: "F1" })).not.toContain('&""');
    const table = { load: "Log[load]", reps: "Log[reps]", reserve: "[@reserve]" };
    expect(formula("E1RM", table)).toBe('=SPARE.E1RM(Log[load], Log[reps], [@reserve]&"")');
  });

  test("names a sheet only where it is not the formula's own", () => {
    const typed = { load: "Log!B2:B20", reps: "'Week 1'!C2:C20" };
    expect(formula("E1RM", typed, "Log")).toBe("=SPARE.E1RM(B2:B20, 'Week 1'!C2:C20)");
    expect(formula("E1RM", typed, "Week 1")).toBe("=SPARE.E1RM(Log!B2:B20, C2:C20)");
  });

  test("takes lists and other formulas as they are", () => {
    expect(formula("SWC", { scores: "{146;148;170}" })).toBe("=SPARE.SWC({146;148;170})");
    expect(formula("E1RM", { load: "=B2*2", reps: "MAX(C2:C9)" })).toBe(
      "=SPARE.E1RM(B2*2, MAX(C2:C9))",
    );
    expect(formula("E1RM", { load: "B2+2.5", reps: "5" })).toBe("=SPARE.E1RM(B2+2.5, 5)");
  });

  test("says what is still missing", () => {
    expect(missing(callOf(entryOf("LOADFOR"), { reps: "5" }))).toEqual(["oneRepMax"]);
    expect(missing(callOf(entryOf("LOADFOR"), { oneRepMax: "140", reps: "5" }))).toEqual([]);
  });

  test("reads every example of the catalogue back into the same formula", () => {
    let read = 0;
    for (const entry of functions) {
      for (const example of entry.examples) {
        const typed = typedIn(entry, example);
        // An example may show the function inside another's call.
        if (!example.startsWith(`=SPARE.${entry.id}(`)) expect(typed, example).toBeUndefined();
        else expect(formulaOf(callOf(entry, typed!), "Sheet1"), example).toBe(example);
        read++;
      }
    }
    expect(read).toBeGreaterThan(50);
  });
});

describe("a reference", () => {
  test("is told from words and numbers", () => {
    for (const text of [
      "B2",
      "$B$2:C20",
      "C:C",
      "C2:.C999",
      "3:3",
      "A1#",
      "Log!B2",
      "'It''s'!B2",
    ]) {
      expect(isReference(text), text).toBe(true);
    }
    for (const text of ["Log[load]", "[@reserve]", "Log[[#All],[load]]"]) {
      expect(isReference(text), text).toBe(true);
    }
    for (const text of ["epley", "east crew", "10", "B", "ABCD1", "B0", "A1:", "Log!"]) {
      expect(isReference(text), text).toBe(false);
    }
  });

  test("quotes a sheet's name where it must, and reads it back", () => {
    expect(referenceTo("Log", "B2")).toBe("Log!B2");
    for (const sheet of ["Week 1", "It's", "A1", "2026", "Log"]) {
      expect(partsOf(referenceTo(sheet, "B2:C3"))).toEqual({ sheet, address: "B2:C3" });
    }
  });

  test("gives single columns of a range", () => {
    expect(columnOf("B2:D20", 1)).toBe("C2:C20");
    expect(columnOf("$Y$2:$AB$2", 2)).toBe("AA2");
  });
});

describe("a selection dealt out to the arguments", () => {
  const { parameters } = entryOf("E1RM");
  const select = (values: CellValues, address: string) => ({ sheet: "Log", address, values });

  test("goes by the headings, in whatever order they stand", () => {
    const values = [
      ["lifter", "RIR", "Load (kg)", "Reps"],
      ["Ada", 2, 100, 5],
    ];
    expect(dealColumns(parameters, select(values, "A1:D2"), headings)).toEqual({
      load: "Log!C2",
      reps: "Log!D2",
      reserve: "Log!B2",
    });
  });

  test("leaves the headings' row out, but for a function that names its results by them", () => {
    const values = [
      ["lifter", "week", "load", "reps"],
      ["Ada", 1, 100, 5],
      ["Ada", 2, 100, 5],
    ];
    expect(dealColumns(parameters, select(values, "A4:D6"), headings)).toEqual({
      load: "Log!C5:C6",
      reps: "Log!D5:D6",
    });
    const { parameters: ofVolume } = entryOf("VOLUMELOAD");
    expect(dealColumns(ofVolume, select(values, "A4:D6"), headings)).toMatchObject({
      load: "Log!C4:C6",
      reps: "Log!D4:D6",
    });
  });

  test("never puts what was done into a target's place, or what is planned into a set's", () => {
    const values = [
      ["e1RM, kg", "reps done", "target reps", "target RIR", "planned load"],
      [140, 5, 3, 1, 120],
    ];
    const { parameters: ofLoadFor } = entryOf("LOADFOR");
    expect(dealColumns(ofLoadFor, select(values, "A1:E2"), headings)).toEqual({
      oneRepMax: "Log!A2",
      reps: "Log!C2",
      reserve: "Log!D2",
    });
    expect(dealColumns(parameters, select(values, "A1:E2"), headings)).toEqual({ reps: "Log!B2" });
  });

  test.each([
    [["Athlete", "Pre squat", "Post squat"], "B", "C"],
    [["name", "pre-test", "post-test"], "B", "C"],
    [["name", "January", "May 2026"], "B", "C"],
    [["test 2", "x", "test 1"], "C", "A"],
  ])("understands test days as people head them: %j", (titles, before, after) => {
    const { parameters: ofChange } = entryOf("CHANGESCORE");
    const values = [titles, ["Ada", 100, 105]];
    expect(dealColumns(ofChange, select(values, "A1:C2"), headings)).toEqual({
      before: `Log!${before}2`,
      after: `Log!${after}2`,
    });
  });

  test("goes in order where there are no headings", () => {
    expect(dealColumns(parameters, select([[100, 5]], "B2:C2"), headings)).toEqual({
      load: "Log!B2",
      reps: "Log!C2",
    });
  });

  test("stays whole for a function that takes a block", () => {
    const { parameters: ofReliability } = entryOf("RELIABILITY");
    expect(dealColumns(ofReliability, select([[146, 140]], "B2:C9"), headings)).toEqual({
      trials: "Log!B2:C9",
    });
  });

  test("knows headings only for arguments that exist", () => {
    const names = new Set(functions.flatMap((entry) => entry.parameters.map(({ name }) => name)));
    for (const name of Object.keys(headings)) expect(names).toContain(name);
  });
});

describe("a message in the sheet's own rows", () => {
  const said = (message: string, text: string) => inRowsOf(message, text, functions);
  const trend = "=SPARE.STRENGTHTREND(A6:A300, Log!E6:E300, F6:F300)";

  test("names the cell of a column, on whichever sheet", () => {
    expect(said("the 19th row of load is text", trend)).toBe("load in E24 is text");
    expect(said("the 2nd row of before is -1", "=SPARE.PAIREDCHANGE(B:B, C:C)")).toBe(
      "before in B2 is -1",
    );
  });

  test("names every row it speaks of", () => {
    const several =
      "the 1st row of load is -1 (3 bad cells in all, next the 2nd row of reps and the 13th row of load)";
    expect(said(several, trend)).toBe(
      "load in E6 is -1 (3 bad cells in all, next reps in F7 and load in E18)",
    );
  });

  test("names the row where no one column is meant, if all start level", () => {
    expect(said("the 4th row: reps plus reserve is 40", trend)).toBe(
      "row 9 of the sheet: reps plus reserve is 40",
    );
    expect(said("the 3rd row of the blocks: weeks is 0", "=SPARE.BLOCKPLAN(C5, B9:I14)")).toBe(
      "row 11 of the sheet (blocks): weeks is 0",
    );
    const apart = "=SPARE.STRENGTHTREND(A6:A300, E5:E299, F6:F300)";
    expect(said("the 4th row: reps plus reserve is 40", apart)).toBe(
      "the 4th row: reps plus reserve is 40",
    );
  });

  test("leaves it as the function said it where the cells cannot be known", () => {
    const message = "the 4th row of load is -1";
    for (const text of [
      '=SPARE.E1RM(FILTER(E6:E300, C6:C300="Ida"), FILTER(F6:F300, C6:C300="Ida"))',
      "=SPARE.E1RM(Log[load], Log[reps])",
      "=MAX(SPARE.E1RM(E6:E300, F6:F300))",
      "=SUM(E6:E300)",
    ]) {
      expect(said(message, text)).toBe(message);
    }
  });
});

describe("a call worked before it is inserted", () => {
  const cells: Record<string, CellValues> = {
    "B2:B3": [[100], [110]],
    "C2:C3": [[5], [5]],
    "D2:D3": [[2], [null]],
    "E2:E3": [[100], ["#REF!"]],
  };
  const port = {
    readRange(reference: string) {
      const values = cells[reference];
      return values ? Promise.resolve(values) : Promise.reject(new Error("none"));
    },
  };
  const worked = (id: string, typed: Typed) =>
    work(callOf(entryOf(id), typed), port, implementations);

  test("gives the numbers the sheet will show", async () => {
    expect(await worked("LOADFOR", { oneRepMax: "140", reps: "5", reserve: "2" })).toEqual({
      kind: "result",
      grid: [[113.513513513514]],
      beside: undefined,
    });
  });

  test("reads cells through the host, a blank reserve as not recorded", async () => {
    const typed = { load: "B2:B3", reps: "C2:C3", reserve: "D2:D3" };
    expect(await worked("E1RM", typed)).toEqual({
      kind: "result",
      grid: [[123.333333333333], [""]],
      beside: { sheet: undefined, first: 1, count: 2, lastColumn: 3 },
    });
  });

  test("shows an error with its message, and passes an error cell on", async () => {
    expect(await worked("E1RM", { load: "80kg", reps: "5" })).toEqual({
      kind: "error",
      code: "#VALUE!",
      message: 'load is text, "80kg"; expected a load above 0',
    });
    const result = await worked("E1RM", { load: "E2:E3", reps: "C2:C3" });
    expect(result).toMatchObject({
      grid: [[116.666666666667], [{ code: "#VALUE!", message: "load in E3 holds #REF!" }]],
    });
  });

  test("names the sheet's own cell in a message about a whole column", async () => {
    const text = { "B5:B6": [[100], [-100]], "C5:C6": [[5], [5]], "D5:D6": [[2], [2]] };
    const reading = {
      readRange: (at: string) => Promise.resolve((text as Record<string, CellValues>)[at]!),
    };
    const typed = { load: "B5:B6", reps: "C5:C6", reserve: "D5:D6" };
    expect(await work(callOf(entryOf("FITCURVE"), typed), reading, implementations)).toMatchObject({
      kind: "error",
      message: expect.stringContaining("load in B6 is -100") as unknown,
    });
  });

  test("reads the column of lifters once, however many columns are cut down to one of them", async () => {
    const asked: string[] = [];
    const reading = {
      readRange(at: string) {
        asked.push(at);
        const column = { A: ["Ida", "Jonas"], B: [100, 110], C: [5, 5], D: [2, 1] }[at[0]!]!;
        return Promise.resolve(column.map((value) => [value]));
      },
    };
    const typed = { load: "B2:B3", reps: "C2:C3", reserve: "D2:D3" };
    const only = [{ reference: "A2:A3", is: "Ida" }];
    const result = await work(
      narrowed(callOf(entryOf("E1RM"), typed), only),
      reading,
      implementations,
    );
    expect(result).toMatchObject({ grid: [[123.333333333333]] });
    expect([...asked].sort()).toEqual(["A2:A3", "B2:B3", "C2:C3", "D2:D3"]);
  });

  test("leaves other formulas to the sheet, and says when cells cannot be read", async () => {
    expect(await worked("E1RM", { load: "=B2*2", reps: "5" })).toMatchObject({ kind: "unknown" });
    expect(await worked("E1RM", { load: "Nowhere!B2", reps: "5" })).toEqual({
      kind: "unknown",
      reason: "Nowhere!B2 cannot be read from here",
    });
  });
});
