import { afterEach, describe, expect, it } from "vitest";
import { openCells, openSheets, type Opened } from "./support";

let book: Opened | undefined;
afterEach(() => book?.close());

async function results(cells: Readonly<Record<string, string | number>>, ...of: string[]) {
  book = await openCells(cells);
  return of.map((address) => book!.read(address));
}

const column = { A1: 3, A2: 1, A3: 2, B1: "x", B2: "y", B3: "x" };

describe("a function that puts cells in order", () => {
  it("leaves the order in which others read them", async () => {
    expect(
      await results(
        { ...column, D1: "=SORT(A1:A3)", E1: '=SUMIF(B1:B3,"x",A1:A3)', F1: "=SORT(A1:A3,,-1)" },
        ...["D1", "D2", "D3", "E1", "F1"],
      ),
    ).toEqual([1, 2, 3, 5, 3]);
  });
});

describe("SUM", () => {
  it("adds decimals to a decimal, and keeps all digits of what is none", async () => {
    const tenths = Object.fromEntries(Array.from({ length: 10 }, (_, row) => [`A${row + 1}`, 0.1]));
    const others = { B1: 1e16, B2: 0.125, B3: -1e16, C1: 1 / 3 };
    const formulas = {
      D1: "=SUM(A1:A10)",
      D2: "=SUM(B1:B3)",
      D3: "=SUM(C1:C9)",
      D4: "=SUM(A1:A3,C1)",
    };
    expect(await results({ ...tenths, ...others, ...formulas }, "D1", "D2", "D3", "D4")).toEqual([
      1,
      0.125,
      1 / 3,
      0.3 + 1 / 3,
    ]);
  });

  it("passes text and truth values over, by whatever formula they come, and stops at the first error", async () => {
    const cells = { ...column, A4: '="7"', A5: "=A1=3", A6: "=A1*2", B4: "=1/0", B5: "=NA()" };
    const formulas = {
      D1: "=SUM(A1:B3)",
      D2: "=SUM(A1:A9)",
      D3: "=SUM(A1:B9)",
      D4: "=SUM(B5,A1:B4)",
    };
    expect(await results({ ...cells, ...formulas }, "D1", "D2", "D3", "D4")).toEqual([
      6,
      12,
      "#DIV/0!",
      "#N/A",
    ]);
  });
});

describe("a formula that the engine fails on", () => {
  it("is #VALUE!, and the others are computed", async () => {
    expect(
      await results({ ...column, D1: "=LAMBDA(SUM(1),2)(1)", E1: "=SUM(A1:A3)" }, "D1", "E1"),
    ).toEqual([expect.stringMatching(/^#/), 6]);
  });
});

describe("a name that refers to itself", () => {
  const cells = {
    ...column,
    D1: "=foo",
    E1: "=SUM(A1:A3)",
    F1: "=fine*2",
    G1: "=SPARE.E1RM(100,A1)",
  };

  it("is an error where it is used, and all else is computed, also later", async () => {
    book = await openSheets({ One: cells }, { foo: "=foo+1", fine: "=One!$A$1" });
    expect(["D1", "E1", "F1"].map((address) => book!.read(address))).toEqual(["#CYCLE!", 6, 6]);
    await book.write("A1", 5);
    expect(["D1", "E1", "F1"].map((address) => book!.read(address))).toEqual(["#CYCLE!", 8, 10]);
    expect(book.read("G1")).toBeCloseTo(100 * (1 + 5 / 30), 9);
  });

  it("may do so by way of others, and names may double each other in vain", async () => {
    const doubling = Object.fromEntries(
      Array.from({ length: 26 }, (_name, at) => [`n${at}_`, `=n${at + 1}_+n${at + 1}_`]),
    );
    const names = { ...doubling, n26_: "=1", foo: "=bar", bar: "=foo*2" };
    book = await openSheets({ One: { ...cells, F1: "=n0_", H1: "=n20_" } }, names);
    expect(["D1", "E1", "F1", "H1"].map((address) => book!.read(address))).toEqual([
      "#CYCLE!",
      6,
      "#VALUE!",
      64,
    ]);
  });
});

describe("a picture from an address", () => {
  it("is not fetched: its formula is an error, whatever it reads", async () => {
    const { fetch } = globalThis;
    let asked = 0;
    globalThis.fetch = () => Promise.reject(new Error(`asked ${++asked} times`));
    try {
      const image = '=IMAGE("https://club.example/x?"&A1)';
      expect(await results({ ...column, D1: image, E1: "=SUM(A1:A3)" }, "D1", "E1")).toEqual([
        "#VALUE!",
        6,
      ]);
      expect(asked).toBe(0);
    } finally {
      globalThis.fetch = fetch;
    }
  });
});
