import fc from "fast-check";
import { expect, test } from "vitest";
import {
  above,
  atLeast,
  atMost,
  below,
  difference,
  sameTo,
  withoutDust,
} from "../../../src/core/statistics/compare";

const decimal = fc.tuple(
  fc.integer({ min: -1_000_000, max: 1_000_000 }),
  fc.integer({ min: 0, max: 4 }),
);

test("binary dust does not make two numbers differ", () => {
  expect(3 * 0.1).not.toBe(0.3);
  expect(sameTo(3 * 0.1, 0.3)).toBe(true);
  expect(above(3 * 0.1, 0.3)).toBe(false);
  expect(below(0.3, 3 * 0.1)).toBe(false);
  expect(atMost(3 * 0.1, 0.3)).toBe(true);
  expect(atLeast(0.3, 3 * 0.1)).toBe(true);
});

test("a difference of a relative 1e-8 is a difference", () => {
  expect(sameTo(100, 100.000001)).toBe(false);
  expect(above(100.000001, 100)).toBe(true);
  expect(below(-100.000001, -100)).toBe(true);
  expect(atMost(100.000001, 100)).toBe(false);
  expect(atLeast(100, 100.000001)).toBe(false);
});

test("nothing but zero is the same as zero", () => {
  expect(sameTo(0, 0)).toBe(true);
  expect(sameTo(1e-30, 0)).toBe(false);
});

test("dust is taken off a number, its digits are not", () => {
  expect(withoutDust(12 * 0.1)).toBe(1.2);
  expect(withoutDust(1.23456789012345)).toBe(1.23456789012345);
});

test("a difference of decimals is the decimal that paper arithmetic gives", () => {
  expect(difference(10.3, 5.3)).toBe(5);
  expect(difference(0, 0)).toBe(0);
  fc.assert(
    fc.property(decimal, fc.integer({ min: -1_000_000, max: 1_000_000 }), ([a, places], b) => {
      const unit = 10 ** places;
      expect(difference(a / unit, b / unit)).toBe((a - b) / unit);
    }),
  );
});

test("a difference of very large or very small numbers is kept", () => {
  expect(difference(3e-200, 1e-200) * 1e200).toBeCloseTo(2, 12);
  expect(difference(3e200, 1e200)).toBe(2e200);
});

test("taking dust off is writing 15 digits and reading them back, near ties and at every size", () => {
  const anySize = fc.double({ noNaN: true, noDefaultInfinity: true });
  const nearTie = fc
    .tuple(fc.bigInt({ min: 10n ** 14n, max: 10n ** 15n }), fc.integer({ min: -9, max: 30 }))
    .map(([digits, power]) => Number(`${digits}5e${-power - 1}`));
  fc.assert(
    fc.property(fc.oneof(anySize, nearTie), (value) => {
      const written = Number(value.toPrecision(15));
      // A minus zero stays one, and the largest numbers stay finite.
      const isItself = value === 0 || !Number.isFinite(written);
      expect(withoutDust(value)).toBe(isItself ? value : written);
    }),
    { numRuns: 2000 },
  );
});
