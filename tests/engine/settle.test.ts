import type { ICellData, IWorkbookData } from "@univerjs/core";
import { afterEach, describe, expect, it } from "vitest";
import type { HeadlessWorkbook } from "../../src/engine/headless";
import { openWorkbook } from "../../src/engine/headless";
import type { Implementations } from "../../src/engine/metadata";
import { prepareNode } from "../../src/engine/node";

let calls = 0;
const probes: Implementations = {
  DOUBLE: (value) => {
    calls++;
    return (value as (number | null)[][]).map((row) => row.map((cell) => (cell ?? 0) * 2));
  },
};
const metadata = { functions: [{ id: "DOUBLE", parameters: [] }] };

let book: HeadlessWorkbook | undefined;
afterEach(() => book?.close());

type Rows = readonly (readonly (number | string | null)[])[];

function dataOf(rows: Rows): IWorkbookData {
  const cellData = Object.fromEntries(
    rows.map((row, at) => [
      at,
      Object.fromEntries(
        row.flatMap((content, column): [number, ICellData][] => {
          if (content === null) return [];
          return [[column, typeof content === "string" ? { f: content } : { v: content }]];
        }),
      ),
    ]),
  );
  return {
    id: "book",
    name: "Book",
    appVersion: "",
    locale: "enUS" as IWorkbookData["locale"],
    styles: {},
    sheetOrder: ["one"],
    sheets: { one: { id: "one", name: "One", rowCount: 30, columnCount: 20, cellData } },
  };
}

async function open(rows: Rows) {
  book = await openWorkbook(dataOf(rows), metadata, probes);
  const opened = book;
  return {
    read: (address: string) => opened.read("One", address),
    write: (address: string, content: number) => opened.write("One", address, content),
  };
}

/** Each formula reads what the one to its right spilled below its own cell; the inputs are in G. */
const chain = [
  ["=B2", "=SPARE.DOUBLE(C2:C3)", "=SPARE.DOUBLE(D2:D4)", "=SPARE.DOUBLE(E2:E5)"],
  [],
  [],
  [],
  [],
  [],
].map((row, at) => [
  ...[...row, null, null, null, null].slice(0, 4),
  at === 0 ? "=SPARE.DOUBLE(F2:F6)" : null,
  at === 0 ? "=SPARE.DOUBLE(G1:G6)" : null,
  at + 1,
]);

describe("a spill that reads a spill that reads a spill", () => {
  it("is computed to the end when the workbook opens", async () => {
    const { read } = await open(chain);
    expect(["A1", "B1", "B2", "C2", "D2", "E2", "F2"].map(read)).toEqual([
      ...[192, 160, 192, 80, 32, 12, 4],
    ]);
  });

  it("is computed to the end when an input changes", async () => {
    const { read, write } = await open(chain);
    await write("G6", 100);
    expect([read("F6"), read("A1")]).toEqual([200, 3200]);
  });
});

describe("a spill that shrinks", () => {
  it("is not read where it no longer is", async () => {
    const { read, write } = await open([
      [6, "=FILTER(C1:C6, C1:C6<=A1)", 1, "=SUM(SPARE.DOUBLE(B1:B9))", "=SPARE.DOUBLE(B1:B9)"],
      ...[2, 3, 4, 5, 6].map((value) => [null, null, value]),
    ]);
    expect([read("D1"), read("E6")]).toEqual([42, 12]);
    await write("A1", 2);
    expect([read("D1"), read("E2"), read("E6")]).toEqual([6, 4, 0]);
    await write("A1", 4);
    expect([read("D1"), read("E4"), read("E6")]).toEqual([20, 8, 0]);
  });

  it.each([
    ["to one cell", "=FILTER(C1:C6, C1:C6<=A1)", 1],
    ["to a value", "=IF(A1>3, FILTER(C1:C6, C1:C6<=A1), 1)", 1],
    ["to an error", "=IF(A1>3, FILTER(C1:C6, C1:C6<=A1), NA())", "#N/A"],
  ])("%s leaves nothing behind, for whoever reads", async (_how, formula, left) => {
    const { read, write } = await open([
      [6, formula, 1, "=SUM(B2:B9)", "=SPARE.DOUBLE(B1:B9)", "=B3"],
      ...[2, 3, 4, 5, 6].map((value) => [null, null, value]),
    ]);
    const cells = ["B1", "B2", "D1", "E3", "F1"];
    expect(cells.map(read)).toEqual([1, 2, 20, 6, 3]);
    await write("A1", 1);
    expect(cells.map(read)).toEqual([left, null, 0, 0, 0]);
    await write("A1", 4);
    expect(cells.map(read)).toEqual([1, 2, 9, 6, 3]);
  });

  it("while a workbook is computed leaves nothing behind of what it first held", async () => {
    // The first pass filters blanks, of which all are kept; then 32, 40, 48, 0 and the blank B6, which shows as 0.
    const { read } = await open([
      [
        "=FILTER(B2:B6, B2:B6<40)",
        "=SPARE.DOUBLE(C2:C6)",
        "=SPARE.DOUBLE(D2:D7)",
        "=SPARE.DOUBLE(E1:E6)",
        1,
      ],
      ...[2, 3, 4, 5, 6].map((value) => [null, null, null, null, value]),
    ]);
    expect(["A1", "A2", "A3", "A4", "A5"].map(read)).toEqual([32, 0, 0, null, null]);
  });
});

describe("a formula that spills", () => {
  it("is computed once where it reads no spill", async () => {
    calls = 0;
    const { read, write } = await open([[1, "=SPARE.DOUBLE(A1:A3)", "=SUM(B1:B3)"], [2], [3]]);
    expect([read("C1"), calls]).toEqual([12, 1]);
    await write("A3", 5);
    expect([read("C1"), calls]).toEqual([16, 2]);
  });
});

describe("a workbook that is opened", () => {
  it("is computed however long its opening is held up", async () => {
    prepareNode();
    const { openInEngine } = await import("../../src/engine/engine");
    const opening = openInEngine(dataOf([[2, "=A1*3"]]), metadata, probes);
    // Longer than the engine waits for a calculation to begin before it takes it that there is none.
    holdUp(600);
    book = await opening;
    expect(book.read("One", "B1")).toBe(6);
  });
});

describe("a change that is made while another is computed", () => {
  it.each(["before anything of it is computed", "when a part of it is computed"])(
    "is computed as well, made %s",
    async (when) => {
      const many = Array.from({ length: 600 }, (_, at) => [null, null, `=A$1+B$1+${at}`]);
      let makeChange: (() => void) | undefined;
      book = await openWorkbook(
        dataOf([[1, 1, "=A1*10", "=B1*10", "=SPARE.DOUBLE(A1:A2)"], ...many]),
        metadata,
        probes,
        (done) => {
          if (when.startsWith("before") ? done === 0 : done > 1) makeChange?.();
        },
      );
      const { write, read } = book;
      let second: Promise<void> | undefined;
      makeChange = () => {
        makeChange = undefined;
        second = write("One", "B1", 3);
        // The change is taken up at the next opportunity.
        holdUp(15);
      };
      await write("One", "A1", 2);
      await second;
      const shown = ["C1", "D1", "E1", "C2", "C601"].map((address) => read("One", address));
      expect(shown).toEqual([20, 30, 4, 5, 604]);
    },
  );
});

/** Has this process do nothing for so many milliseconds. */
function holdUp(milliseconds: number): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, milliseconds);
}
