import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bilinear, invertPositive } from "../../../src/core/statistics/positiveMatrix";
import { cellAt, elementAt } from "../../present";

const entry = fc.double({ min: -5, max: 5, noNaN: true });

/** B B′ + I, which is symmetric and positive whatever B. */
const positive = fc
  .integer({ min: 1, max: 5 })
  .chain((size) =>
    fc.array(fc.array(entry, { minLength: size, maxLength: size }), {
      minLength: size,
      maxLength: size,
    }),
  )
  .map((rows) =>
    rows.map((a, i) =>
      rows.map((b, j) =>
        a.reduce((sum, value, k) => sum + value * elementAt(b, k), i === j ? 1 : 0),
      ),
    ),
  );

describe("the inverse of a positive matrix", () => {
  it("gives the unit matrix back when multiplied by it", () => {
    fc.assert(
      fc.property(positive, (matrix) => {
        const { inverse } = invertPositive(matrix);
        matrix.forEach((row, i) =>
          matrix.forEach((_, j) => {
            const product = row.reduce((sum, value, k) => sum + value * cellAt(inverse, k, j), 0);
            expect(Math.abs(product - (i === j ? 1 : 0))).toBeLessThan(1e-8);
          }),
        );
      }),
    );
  });

  it("has the determinant by the rule of Sarrus", () => {
    const matrix = [
      [4, 1, 2],
      [1, 5, 3],
      [2, 3, 6],
    ];
    // 4·5·6 + 2·(1·3·2) − 4·9 − 5·4 − 6·1.
    expect(Math.exp(invertPositive(matrix).logDeterminant)).toBeCloseTo(70, 10);
    expect(invertPositive([])).toEqual({ inverse: [], logDeterminant: 0 });
  });

  it("is multiplied from both sides by vectors", () => {
    const matrix = [
      [1, 2],
      [3, 4],
    ];
    expect(bilinear([1, 10], matrix, [1, 100])).toBe(1 + 200 + 30 + 4000);
  });
});
