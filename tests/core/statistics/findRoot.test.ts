import fc from "fast-check";
import { expect, test } from "vitest";
import { NoAnswer } from "../../../src/core/problem";
import { findRoot, findRootNear, refineRoot } from "../../../src/core/statistics/findRoot";

test("a root between two ends is found to full precision", () => {
  expect(findRoot((x) => x ** 3 - 2, 0, 2)).toBeCloseTo(Math.cbrt(2), 13);
  expect(findRoot((x) => Math.cos(x) - x, 0, 1)).toBeCloseTo(0.7390851332151607, 13);
});

test("a root at either end counts", () => {
  expect(findRoot((x) => x - 1, 1, 5)).toBe(1);
  expect(findRoot((x) => x - 5, 1, 5)).toBe(5);
});

test("smooth functions take few steps, and flat and steep ones still end", () => {
  const evaluations = (f: (x: number) => number, low: number, high: number): number => {
    let count = 0;
    findRoot((x) => (count++, f(x)), low, high);
    return count;
  };
  expect(evaluations((x) => Math.exp(x) - 5, 0, 4)).toBeLessThan(16);
  expect(evaluations((x) => (x - 1) ** 9, 0, 3)).toBeLessThan(150);
  expect(evaluations((x) => (x < Math.PI ? -1 : 1), 0, 10)).toBeLessThan(80);
});

test("ends on the same side have no answer", () => {
  expect(() => findRoot((x) => x ** 2 + 1, -1, 1)).toThrow(NoAnswer);
});

test("a rising function needs no ends, only a guess", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e3, max: 1e3, noNaN: true }),
      fc.double({ min: -1e3, max: 1e3, noNaN: true }),
      (root, guess) => {
        const found = findRootNear((x) => Math.atan(x - root), guess);
        expect(found).toBeCloseTo(root, 9);
      },
    ),
  );
});

test("a function that never reaches 0 has no answer", () => {
  expect(() => findRootNear(() => 1, 0)).toThrow(NoAnswer);
});

test("a good guess and the slope there need few evaluations", () => {
  let count = 0;
  const found = refineRoot((x) => (count++, Math.exp(x) - 5), 1.6, 5);
  expect(found).toBeCloseTo(Math.log(5), 13);
  expect(count).toBeLessThan(6);
});

test("a slope that is far too steep does not pass a near guess for the root", () => {
  expect(Math.abs(refineRoot(Math.atan, 5e-7, 1e3))).toBeLessThan(1e-12);
});

test("and a bad guess, or a wrong slope, end at the same root", () => {
  const number = fc.double({ min: -50, max: 50, noNaN: true });
  fc.assert(
    fc.property(number, number, fc.constantFrom(1e-3, 1, 1e3, 0, -1), (root, guess, slope) => {
      expect(refineRoot((x) => Math.atan(x - root), guess, slope)).toBeCloseTo(root, 9);
    }),
  );
});
