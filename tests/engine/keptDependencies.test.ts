import { afterEach, describe, expect, it, vi } from "vitest";
import { RewritingLexer } from "../../src/engine/corrections/rewriting";
import { columnLetters } from "../../src/formula/address";
import type { Opened } from "./support";
import { openCells, openSheets } from "./support";

/** More formulas than the engine's own memory holds. */
const ROWS = 200;
const COLUMNS = 30;

let book: Opened | undefined;
afterEach(() => {
  book?.close();
  vi.restoreAllMocks();
});

describe("what a formula reads", () => {
  it("is not asked again of every formula of a long log whenever a cell is typed", async () => {
    const cells: Record<string, string | number> = {};
    for (let row = 1; row <= ROWS; row++) {
      cells[`A${row}`] = 100;
      for (let column = 1; column <= COLUMNS; column++) {
        cells[`${columnLetters(column)}${row}`] = `=ROUND(A${row},0)*${column}`;
      }
    }
    book = await openCells(cells);
    const takenApart = vi.spyOn(RewritingLexer.prototype, "treeBuilder");
    await book.write("A100", 50);
    expect([book.read("C100"), book.read("C101")]).toEqual([100, 200]);
    expect(takenApart.mock.calls.length).toBeLessThanOrEqual(COLUMNS);
  });

  it("is its own sheet's, where another sheet has the same formula", async () => {
    book = await openSheets({
      One: { A1: 1, B1: "=A1*2", C1: "=B1+1" },
      Two: { A1: 10, B1: "=A1*2", C1: "=B1+1" },
    });
    await book.write("A1", 5);
    expect([book.read("C1"), book.read("C1", "Two")]).toEqual([11, 21]);
  });
});
