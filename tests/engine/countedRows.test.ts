import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Opened } from "./support";
import { openCells } from "./support";

/*
 * A list that counts its own rows, as people fill them down: ROWS(B$1:B1) stands in B1 itself. Asking
 * how many rows there are waits for nothing that stands in them.
 */
describe("a list that counts its rows from its own first cell", () => {
  const rows = [1, 2, 3, 4];
  let book: Opened;

  beforeEach(async () => {
    const cells: Record<string, string | number> = {
      A1: "Imke",
      A2: "Bram",
      D1: "=COUNTA(A1:A9)",
      E1: "squat",
      E2: "row",
      F1: "=COLUMNS($E1:F1)",
    };
    for (const row of rows) {
      const at = `ROWS(B$1:B${row})`;
      cells[`B${row}`] = `=IF(${at}>$D$1,"",INDEX($A$1:$A$9,${at}))`;
      cells[`C${row}`] = `=IF(B${row}="","",B${row}&": "&INDEX($E$1:$E$2,MOD(${at}-1,2)+1))`;
    }
    book = await openCells(cells);
  });
  afterEach(() => book.close());

  const list = (column: string) => rows.map((row) => book.read(`${column}${row}`));

  it("is read right from its first row on", () => {
    expect(list("C")).toEqual(["Imke: squat", "Bram: row", "", ""]);
    expect(book.read("F1")).toBe(2);
  });

  it("is computed before what reads it, when it grows, changes and shrinks", async () => {
    await book.write("A3", "Tess");
    expect(list("C")).toEqual(["Imke: squat", "Bram: row", "Tess: squat", ""]);
    await book.write("A1", "Noor");
    expect(list("C")[0]).toBe("Noor: squat");
    await book.write("E1", "bench");
    expect(list("C")).toEqual(["Noor: bench", "Bram: row", "Tess: bench", ""]);
    await book.write("A3", null);
    expect(list("B")).toEqual(["Noor", "Bram", "", ""]);
    expect(list("C")).toEqual(["Noor: bench", "Bram: row", "", ""]);
  });
});
