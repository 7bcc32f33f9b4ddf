import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NoAnswer } from "../../../src/core/problem";
import {
  correlation,
  mean,
  standardDeviation,
  variance,
} from "../../../src/core/statistics/moments";

const column = fc.array(fc.integer({ min: -999, max: 999 }), { minLength: 2, maxLength: 40 });

describe("published columns", () => {
  // Anscombe 1973, Am Stat 27:17-21: the first of four sets that share their moments.
  const x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
  const y = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68];

  test("have the printed means, variances and correlation", () => {
    expect(mean(x)).toBe(9);
    expect(variance(x)).toBeCloseTo(11, 12);
    expect(mean(y)).toBeCloseTo(7.5, 2);
    expect(variance(y)).toBeCloseTo(4.127, 3);
    expect(correlation(x, y)).toBeCloseTo(0.816, 3);
  });
});

test("a large offset costs no precision", () => {
  // As in NIST's Statistical Reference Datasets, NumAcc3: a mean of 1000000.2 and an SD of exactly 0.1.
  const values = [1000000.2];
  for (let i = 0; i < 500; i++) values.push(1000000.1, 1000000.3);
  expect(mean(values)).toBeCloseTo(1000000.2, 9);
  expect(standardDeviation(values)).toBeCloseTo(0.1, 9);
});

test("shifting a column moves its mean and leaves its spread", () => {
  fc.assert(
    fc.property(column, fc.integer({ min: -9999, max: 9999 }), (values, shift) => {
      const shifted = values.map((value) => value + shift);
      expect(mean(shifted)).toBeCloseTo(mean(values) + shift, 9);
      expect(variance(shifted)).toBeCloseTo(variance(values), 6);
    }),
  );
});

test("values that are all the same have no spread at all, whatever their binary digits", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
      fc.integer({ min: 2, max: 200 }),
      (value, n) => {
        expect(variance(new Array<number>(n).fill(value))).toBe(0);
      },
    ),
  );
});

test("a column correlates 1 with itself and with nothing more", () => {
  fc.assert(
    fc.property(column, column, (x, y) => {
      const n = Math.min(x.length, y.length);
      const [a, b] = [x.slice(0, n), y.slice(0, n)];
      fc.pre(new Set(a).size > 1 && new Set(b).size > 1);
      expect(correlation(a, a)).toBeCloseTo(1, 12);
      expect(Math.abs(correlation(a, b))).toBeLessThanOrEqual(1);
      expect(correlation(a, b)).toBeCloseTo(correlation(b, a), 12);
    }),
  );
});

test("too few values, or none that differ, have no answer", () => {
  expect(() => mean([])).toThrow(NoAnswer);
  expect(() => variance([5])).toThrow(NoAnswer);
  expect(() => correlation([1, 2, 3], [4, 4, 4])).toThrow(NoAnswer);
});
