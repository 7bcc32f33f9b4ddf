import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cellAddress } from "../../../src/formula/address";
import { bookOf, type FormulaCell } from "../../../src/recalculate/book";
import { findCircles } from "../../../src/recalculate/reach/circles";
import { readsFinder, type Reads } from "../../../src/recalculate/reach/reads";
import { meet } from "../../../src/formula/address";
import { readPackage, readWorkbook } from "../../../src/xlsx";
import { buildBook } from "../../cli/support";

/** A workbook of one sheet with these formulas, by row and column, and what each reads. */
function bookOfFormulas(formulas: readonly (readonly string[])[]) {
  const rows = formulas.map((cells, row) => {
    const written = cells.map((text, column) => {
      return `<c r="${cellAddress(row, column)}"><f>${text}</f></c>`;
    });
    return `<row r="${row + 1}">${written.join("")}</row>`;
  });
  const book = bookOf(readWorkbook(readPackage(buildBook({ sheets: { Log: rows.join("") } }))));
  const readsIn = readsFinder(book);
  const reads = new Map(book.formulas.map((cell) => [cell, readsIn(cell)]));
  return { formulas: book.formulas, readsOf: (cell: FormulaCell) => reads.get(cell)! };
}

/** From each formula along all it reads, until it is met again. */
function circlesByWalking(
  formulas: readonly FormulaCell[],
  readsOf: (cell: FormulaCell) => Reads,
): Set<FormulaCell> {
  const next = new Map(
    formulas.map((cell) => [
      cell,
      formulas.filter((other) => readsOf(cell).areas.some(({ area }) => meet(area, other.area))),
    ]),
  );
  return new Set(
    formulas.filter((cell) => {
      const reached = new Set(next.get(cell));
      for (const each of reached) for (const other of next.get(each)!) reached.add(other);
      return reached.has(cell);
    }),
  );
}

describe("circles", () => {
  const address = fc
    .tuple(fc.integer({ min: 0, max: 7 }), fc.integer({ min: 0, max: 3 }))
    .map(([row, column]) => cellAddress(row, column));
  const range = fc.oneof(
    address,
    fc.tuple(address, address).map(([one, other]) => `${one}:${other}`),
    fc.constantFrom("Z1", "Z:Z", "2:2"),
  );
  const text = fc.oneof(
    { weight: 3, arbitrary: fc.constant("Z1+1") },
    { weight: 2, arbitrary: range.map((area) => `SUM(${area})`) },
  );
  const sheet = fc.array(fc.array(text, { minLength: 4, maxLength: 4 }), {
    minLength: 8,
    maxLength: 8,
  });

  it("are what a walk from each formula along all it reads comes back to", () => {
    fc.assert(
      fc.property(sheet, (texts) => {
        const { formulas, readsOf } = bookOfFormulas(texts);
        const walked = circlesByWalking(formulas, readsOf);
        expect(new Set(findCircles(formulas, readsOf))).toEqual(walked);
      }),
      { numRuns: 200 },
    );
  });

  it("are not what tells where its own cell stands", () => {
    const { formulas, readsOf } = bookOfFormulas([["ROWS(A$1:A1)"], ["ROWS(A$1:A2)"]]);
    expect(findCircles(formulas, readsOf).size).toBe(0);
  });

  it("are looked for in running totals at the cost of a few steps a formula", () => {
    const length = 30_000;
    const { formulas, readsOf } = bookOfFormulas(
      Array.from({ length }, (_, row) => ["1*1", `SUM(A$1:A${row + 1})`]),
    );
    let steps = 0;
    const counted = (cell: FormulaCell) => {
      steps += readsOf(cell).areas.length;
      return readsOf(cell);
    };
    const start = process.cpuUsage().user;
    expect(findCircles(formulas, counted).size).toBe(0);
    expect(steps).toBe(length);
    // Every formula behind every other would be 450 million steps, half a minute and more.
    expect(process.cpuUsage().user - start).toBeLessThan(5e6);
  });
});
