import type { ICellData, IWorkbookData } from "@univerjs/core";
import { afterEach, describe, expect, it } from "vitest";
import { invalid, notAvailable } from "../../src/cells";
import type { HeadlessWorkbook } from "../../src/engine/headless";
import { openWorkbook } from "../../src/engine/headless";
import type { Implementations } from "../../src/engine/metadata";
import { parseCell } from "../../src/formula/address";

/*
 * How the spreadsheet hands cells to a function and puts its result back, seen through functions
 * made for looking: SEE returns what it was given as text, the others return what a test needs.
 */
const probes: Implementations = {
  SEE: (...args) => [[JSON.stringify(args.map((arg) => (arg === undefined ? "left out" : arg)))]],
  DOUBLE: (value) => (value as number[][]).map((row) => row.map((cell) => cell * 2)),
  CHART: () => [
    ["reps", "load"],
    [1, 100],
    [2, ""],
    [3, notAvailable("nothing is known of 3 reps")],
  ],
  REFUSE: (value) => [[invalid(`value is ${JSON.stringify(value)}`)]],
  LIFT: (values) =>
    (values as unknown[][]).map(([value], row) => [
      typeof value === "number" ? value : invalid(`row ${row + 1}: value is text`),
    ]),
};

const metadata = {
  functions: Object.keys(probes).map((id) => ({ id, parameters: [] })),
};

type Cells = Record<string, string | number | boolean>;

function bookOf(cells: Cells, size = { rowCount: 200, columnCount: 20 }): IWorkbookData {
  const cellData: Record<number, Record<number, ICellData>> = {};
  for (const [address, content] of Object.entries(cells)) {
    const { row, column } = parseCell(address)!;
    (cellData[row] ??= {})[column] =
      typeof content === "string" && content.startsWith("=") ? { f: content } : { v: content };
  }
  return {
    id: "book",
    name: "Book",
    appVersion: "",
    locale: "enUS" as IWorkbookData["locale"],
    styles: {},
    sheetOrder: ["one"],
    sheets: { one: { id: "one", name: "One", ...size, cellData } },
  };
}

let book: HeadlessWorkbook | undefined;
afterEach(() => book?.close());

async function open(cells: Cells, size?: { rowCount: number; columnCount: number }) {
  book = await openWorkbook(bookOf(cells, size), metadata, probes);
  const opened = book;
  return {
    read: (address: string) => opened.read("One", address),
    message: (address: string) => opened.message("One", address),
    write: (address: string, content: number | string | null) =>
      opened.write("One", address, content),
    seen: (address: string): unknown => JSON.parse(String(opened.read("One", address))),
  };
}

const error = (code: string) => ({ type: "Error", basicType: "Error", basicValue: code });

describe("what a function is given", () => {
  it("is a single value for a value, and a grid for a reference, even to one cell", async () => {
    const { seen } = await open({
      A1: 5,
      A2: "six",
      C1: '=SPARE.SEE(1.5,"text",TRUE)',
      C2: "=SPARE.SEE(A1,A1:A2)",
    });
    expect(seen("C1")).toEqual([1.5, "text", true]);
    expect(seen("C2")).toEqual([[[5]], [[5], ["six"]]]);
  });

  it("tells a blank cell from a zero, and both from an argument left out", async () => {
    const { seen } = await open({ A1: 0, C1: "=SPARE.SEE(A1:A2,,A2,0)" });
    expect(seen("C1")).toEqual([[[0], [null]], "left out", [[null]], 0]);
  });

  it("holds the errors of a range in place, and its other cells with them", async () => {
    const { seen } = await open({
      A1: 1,
      A2: "=1/0",
      A3: "=NA()",
      A4: 4,
      C1: "=SPARE.SEE(A1:A4)",
      C2: "=SPARE.SEE(1/0)",
    });
    expect(seen("C1")).toEqual([[[1], [error("#DIV/0!")], [error("#N/A")], [4]]]);
    expect(seen("C2")).toEqual([error("#DIV/0!")]);
  });

  it("is #REF! for a cell of a sheet that is not there", async () => {
    const { seen } = await open({ A1: 1, C1: "=SPARE.SEE(Gone!A1)" });
    expect(seen("C1")).toEqual([error("#REF!")]);
  });

  it("is text for a column joined with nothing, blanks as empty text", async () => {
    const { seen } = await open({ A1: 2, A3: 0, C1: '=SPARE.SEE(A1:A3&"")' });
    expect(seen("C1")).toEqual([[["2"], [""], ["0"]]]);
  });

  it("ends a whole column at the last row any of the call's columns uses", async () => {
    const { seen } = await open(
      { A1: 1, A2: 2, B1: 3, B4: 4, D1: "=SPARE.SEE(A:A,B:B)", E1: "=SPARE.SEE(G:G)" },
      { rowCount: 1_048_576, columnCount: 100 },
    );
    expect(seen("D1")).toEqual([
      [[1], [2], [null], [null]],
      [[3], [null], [null], [4]],
    ]);
    expect(seen("E1")).toEqual([[[null]]]);
  });

  it("ends a whole row at its last used column", async () => {
    const { seen } = await open({ A1: 1, C1: 2, A3: "=SPARE.SEE(1:1)" });
    expect(seen("A3")).toEqual([[[1, null, 2]]]);
  });

  it("reaches a function in all three spellings", async () => {
    const { read } = await open({
      A1: 1,
      C1: "=SPARE.DOUBLE(A1)",
      C2: "=SPARE_DOUBLE(A1)",
      C3: "=_xldudf_SPARE_DOUBLE(A1)",
      C4: "=spare.double(A1)",
    });
    expect(["C1", "C2", "C3", "C4"].map(read)).toEqual([2, 2, 2, 2]);
  });
});

describe("what a function returns", () => {
  it("spills over the cells beside and below it", async () => {
    const { read } = await open({ C1: "=SPARE.CHART()" });
    expect(["C1", "D1", "C2", "D2", "C3", "D3", "C4", "D4"].map(read)).toEqual([
      ...["reps", "load"],
      ...[1, 100],
      ...[2, ""],
      ...[3, "#N/A"],
    ]);
  });

  it("is #SPILL! where something is in the way, and spills once that is gone", async () => {
    const { read, write } = await open({ C1: "=SPARE.CHART()", D2: "in the way" });
    expect([read("C1"), read("D1"), read("D2")]).toEqual(["#SPILL!", null, "in the way"]);
    await write("D2", null);
    expect([read("C1"), read("D1"), read("D2")]).toEqual(["reps", "load", 100]);
  });

  it("feeds other formulas, from inside them and from the cells it spilled over", async () => {
    const { read } = await open({
      A1: 1,
      A2: 2,
      C1: "=SPARE.CHART()",
      F1: "=ROUND(SPARE.DOUBLE(A1)/3,2)",
      F2: "=SUM(SPARE.DOUBLE(A1:A2))",
      F3: "=D2+1",
      F4: "=SUM(SPARE.DOUBLE(SPARE.DOUBLE(A1:A2)))",
    });
    expect(["F1", "F2", "F3", "F4"].map(read)).toEqual([0.67, 6, 101, 12]);
  });

  it("is computed again when a cell it reads changes", async () => {
    const { read, write } = await open({ A1: 1, C1: "=SPARE.DOUBLE(A1)", C2: "=C1+1" });
    await write("A1", 10);
    expect([read("C1"), read("C2")]).toEqual([20, 21]);
  });
});

describe("the message of an error", () => {
  it("is found in the cell of the formula", async () => {
    const { read, message } = await open({ A1: "80kg", C1: "=SPARE.REFUSE(A1)" });
    expect(read("C1")).toBe("#VALUE!");
    expect(message("C1")).toBe('value is [["80kg"]]');
  });

  it("is found in the cell of a spill that shows it", async () => {
    const { message } = await open({
      A1: "a",
      A2: 2,
      A3: "c",
      C1: "=SPARE.CHART()",
      F1: "=SPARE.LIFT(A1:A3)",
    });
    expect(message("D4")).toBe("nothing is known of 3 reps");
    expect(message("D3")).toBeUndefined();
    expect(["F1", "F2", "F3"].map(message)).toEqual([
      "row 1: value is text",
      undefined,
      "row 3: value is text",
    ]);
  });

  it("is found through the functions a formula wraps around ours", async () => {
    const { message } = await open({ A1: 1, A2: "b", C1: "=ROUND(SUM(SPARE.LIFT(A1:A2)),1)" });
    expect(message("C1")).toBe("row 2: value is text");
  });

  it("goes when the error goes, and follows the data", async () => {
    const { read, message, write } = await open({ A1: "a", C1: "=SPARE.LIFT(A1:A2)", A2: 2 });
    await write("A1", 1);
    expect([read("C1"), message("C1")]).toEqual([1, undefined]);
    await write("A2", "b");
    expect([read("C2"), message("C2")]).toEqual(["#VALUE!", "row 2: value is text"]);
  });

  it("says of a result that found no room that it needs some", async () => {
    const { message } = await open({ C1: "=SPARE.CHART()", D2: "in the way" });
    expect(message("C1")).toMatch(/needs more cells/);
  });

  it("does not stay behind when another formula takes the cell", async () => {
    const { read, message, write } = await open({ A1: "a", C1: "=SPARE.LIFT(A1:A1)" });
    await write("C1", '=1+"b"');
    expect([read("C1"), message("C1")]).toEqual(["#VALUE!", undefined]);
  });

  it("is not made up for an error that is not ours", async () => {
    const { read, message } = await open({ C1: "=1/0", C2: "#VALUE!" });
    expect([read("C1"), message("C1"), message("C2")]).toEqual(["#DIV/0!", undefined, undefined]);
  });
});

describe("a workbook without a screen", () => {
  it("refuses a catalogue with a function that nothing implements", async () => {
    const listed = { functions: [{ id: "NOTHING", parameters: [] }] };
    await expect(openWorkbook(bookOf({}), listed, {})).rejects.toThrow(/NOTHING/);
  });

  it("saves its formulas with what they computed", async () => {
    await open({ A1: 4, C1: "=SPARE_DOUBLE(A1)" });
    expect(book?.save().sheets.one?.cellData?.[0]?.[2]).toMatchObject({
      f: "=SPARE.DOUBLE(A1)",
      v: 8,
    });
  });

  it("says which sheet it does not have", async () => {
    await open({});
    expect(() => book?.read("Two", "A1")).toThrow('no sheet is called "Two"');
  });
});
