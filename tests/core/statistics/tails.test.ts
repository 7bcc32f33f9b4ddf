import { describe, expect, it } from "vitest";
import tails from "../../../shared/reference/tails.json";
import {
  chiSquareCdf,
  chiSquareQuantile,
  chiSquareUpperTail,
  fCdf,
  fUpperTail,
  studentCdf,
  studentQuantile,
} from "../../../src/core/statistics/distributions";
import { gammaShares } from "../../../src/core/statistics/incompleteGamma";

const CLOSE = 1e-10;

/** Rows of numbers against what a function makes of them; names the row that is off. */
function expectRows(rows: number[][], miss: (row: number[]) => number) {
  const off = rows.filter((row) => !(miss(row) <= CLOSE)).map((row) => [...row, miss(row)]);
  expect(off).toEqual([]);
}
const apart = (actual: number, expected: number) => Math.abs(actual / expected - 1);

describe("tails from half a degree of freedom to a million", () => {
  it("has both tails of chi-square", () => {
    const { rows } = tails.chiSquare;
    expect(rows.length).toBeGreaterThan(150);
    expectRows(rows, ([df, x, lower]) => apart(chiSquareCdf(x!, df!), lower!));
    expectRows(rows, ([df, x, , upper]) => apart(chiSquareUpperTail(x!, df!), upper!));
  });

  it("finds chi-square's quantiles again", () => {
    expectRows(tails.chiSquare.rows, ([df, x, lower]) =>
      lower! < 0.9 ? apart(chiSquareQuantile(lower!, df!), x!) : 0,
    );
  });

  it("has Student's upper tail, as far out as a number reaches", () => {
    expectRows(tails.student.rows, ([df, t, upper]) => apart(studentCdf(-t!, df!), upper!));
    expectRows(tails.student.rows, ([df, t, upper]) =>
      upper! < 0.4 ? apart(studentQuantile(upper!, df!), -t!) : 0,
    );
  });

  it("finds t quantiles where a chance of 1e-300 lies, by the closed forms of 1 and 2 degrees of freedom", () => {
    for (const p of [1e-100, 1e-200, 1e-300]) {
      expect(apart(studentQuantile(p, 1), -1 / Math.tan(Math.PI * p))).toBeLessThan(1e-12);
      expect(apart(studentQuantile(p, 2), -1 / Math.sqrt(2 * p))).toBeLessThan(1e-12);
      expect(studentQuantile(1 - 1e-9, 1)).toBeGreaterThan(3e8);
    }
    expect(() => studentQuantile(1e-300, 0.5)).toThrow("too large");
  });

  it("has both tails of F", () => {
    expectRows(tails.fisherF.rows, ([a, b, x, lower]) => apart(fCdf(x!, a!, b!), lower!));
    expectRows(tails.fisherF.rows, ([a, b, x, , upper]) => apart(fUpperTail(x!, a!, b!), upper!));
  });
});

describe("the incomplete gamma function", () => {
  it("passes without a step from its sums to the normal approximation of a large a", () => {
    for (const z of [-30, -8, -3, -1, -0.1, 0.1, 1, 3, 8, 30]) {
      const [before, after] = [1e7, 1e7 + 2e-9].map((a) => gammaShares(a, 1e7 + z * 1e7 ** 0.5));
      // The hair between the two a moves the shares too, by z a hair's √a at most.
      expect(apart(after!.lower, before!.lower)).toBeLessThan(2e-10);
      expect(apart(after!.upper, before!.upper)).toBeLessThan(2e-10);
    }
  });

  it("stays a pair of shares at any size", () => {
    for (const a of [1e-6, 0.25, 1, 1e4, 1e9, 1e200]) {
      for (const times of [1e-6, 0.5, 1, 2, 1e6]) {
        const { lower, upper } = gammaShares(a, a * times);
        expect(Math.min(lower, upper)).toBeGreaterThanOrEqual(0);
        expect(Math.abs(lower + upper - 1)).toBeLessThan(1e-12);
      }
    }
  });
});
