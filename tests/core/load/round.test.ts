import fc from "fast-check";
import { expect, test } from "vitest";
import { roundToMultiple, type Rounding } from "../../../src/core/load/round";
import { BadInput } from "../../../src/core/problem";

const directions: Rounding[] = ["nearest-tie-down", "nearest-tie-up", "down", "up"];

test("a load goes to the nearest multiple, a tie down", () => {
  expect(roundToMultiple(61.25, 2.5, "nearest-tie-down")).toBe(60);
  expect(roundToMultiple(98.6, 2.5, "nearest-tie-down")).toBe(97.5);
  expect(roundToMultiple(98.8, 2.5, "nearest-tie-down")).toBe(100);
});

test("a reserve goes to the nearest multiple, a tie up", () => {
  expect(roundToMultiple(2.5, 1, "nearest-tie-up")).toBe(3);
  expect(roundToMultiple(2.4, 1, "nearest-tie-up")).toBe(2);
});

test("down never goes above the load and up never below it", () => {
  expect(roundToMultiple(99.9, 2.5, "down")).toBe(97.5);
  expect(roundToMultiple(97.6, 2.5, "up")).toBe(100);
});

test("binary fractions do not decide what is already a multiple", () => {
  expect(roundToMultiple(1.2, 0.1, "down")).toBe(1.2);
  expect(roundToMultiple(5.4, 0.6, "up")).toBe(5.4);
});

test("binary fractions do not decide what is a tie", () => {
  expect(roundToMultiple(157.5 * (22 / 36), 2.5, "nearest-tie-down")).toBe(95);
});

test("a multiple of 0 leaves the number alone, one below 0 is refused", () => {
  expect(roundToMultiple(61.37, 0, "down")).toBe(61.37);
  expect(() => roundToMultiple(60, -2.5, "down")).toThrow(BadInput);
});

test("every decimal multiple stays itself, and comes out clean", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 4000 }),
      fc.integer({ min: 1, max: 400 }),
      fc.constantFrom(...directions),
      (steps, hundredths, direction) => {
        const exact = (steps * hundredths) / 100;
        expect(roundToMultiple(exact, hundredths / 100, direction)).toBe(exact);
      },
    ),
  );
});

test("whatever lies between two multiples goes to one of them, the right one", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 400 }),
      fc.integer({ min: 1, max: 99 }),
      fc.constantFrom(...directions),
      (steps, hundredths, direction) => {
        const up = { "nearest-tie-down": hundredths > 50, "nearest-tie-up": hundredths >= 50 };
        const goesUp = direction === "up" || (direction !== "down" && up[direction]);
        const load = 2.5 * (steps + hundredths / 100);
        expect(roundToMultiple(load, 2.5, direction)).toBe(2.5 * (steps + (goesUp ? 1 : 0)));
      },
    ),
  );
});
