import { describe, expect, test } from "vitest";
import { equations, fractionAt } from "../../src/core/strength/equations";
import { elementAt } from "../present";
import { readReference } from "./data";

interface Handbook {
  readonly seen: { readonly reps: readonly number[]; readonly percent: readonly number[] };
}

// Essentials of Strength Training and Conditioning (NSCA), as in NSCA's open training load chart.
const { reps, percent } = (readReference("handbook") as Handbook).seen;
const table = reps.map((count, row) => ({ count, percent: elementAt(percent, row) }));
const fractions = (count: number) =>
  Object.values(equations).map((equation) => 100 * fractionAt(equation, count));

describe("the handbook's percent of 1RM for the repetitions allowed", () => {
  test("covers 1 to 10 reps, and every further rep costs load", () => {
    expect(reps).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    const costs = percent.slice(1).map((value, row) => elementAt(percent, row) - value);
    expect(Math.min(...costs)).toBeGreaterThan(0);
  });

  test("is met exactly at one rep by every equation", () => {
    expect(fractions(1)).toEqual(Object.keys(equations).map(() => percent[0]));
  });

  test.each(table.slice(1))(
    "lies between the lowest and the highest equation at $count reps",
    ({ count, percent: printed }) => {
      expect(Math.min(...fractions(count))).toBeLessThan(printed);
      expect(Math.max(...fractions(count))).toBeGreaterThan(printed);
    },
  );
});
