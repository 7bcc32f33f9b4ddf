import { afterEach, describe, expect, it } from "vitest";
import { openCells, type Opened } from "./support";

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

describe("a formula that the engine fails on", () => {
  it("is #VALUE!, and the others are computed", async () => {
    expect(
      await results({ ...column, D1: "=LAMBDA(SUM(1),2)(1)", E1: "=SUM(A1:A3)" }, "D1", "E1"),
    ).toEqual([expect.stringMatching(/^#/), 6]);
  });
});
