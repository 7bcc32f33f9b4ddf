import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import { pairedChange } from "../../../src/core/testing/pairedChange";
import { expectAllNear, expectPrinted } from "../studies/matching";
import { expectNoNonsense, reasonOf } from "./finite";
import { sleep } from "./published";

describe("Student 1908, Biometrika 6:1-25, hours of sleep", () => {
  const result = pairedChange(sleep.before, sleep.after, 0.95);

  test("has the well-known test", () => {
    expectPrinted(result.meanChange, "1.58");
    expectPrinted(result.t, "4.06");
    expectPrinted(result.p, "0.0028");
  });

  test('has the values of R 4.2.2 (t.test, metafor::escalc("SMCR"))', () => {
    expectAllNear(result, {
      n: 10,
      meanBefore: 10.75,
      meanAfter: 12.33,
      meanChange: 1.58,
      sdOfChange: 1.22999548,
      standardError: 0.388958724,
      low: 0.700114237,
      high: 2.45988576,
      t: 4.06212768,
      df: 9,
      p: 0.0028328902,
      effectSize: 0.807107062,
      effectStandardError: 0.271177155,
    });
    const sure = pairedChange(sleep.before, sleep.after, 0.99);
    expectAllNear(sure, { low: 0.315948115, high: 2.84405189 });
  });
});

const scores = fc.array(
  fc.tuple(fc.integer({ min: 500, max: 1500 }), fc.integer({ min: 500, max: 1500 })),
  { minLength: 3, maxLength: 30 },
);
const split = (pairs: [number, number][]) => ({
  before: pairs.map(([before]) => before / 10),
  after: pairs.map(([, after]) => after / 10),
});

test("the test agrees with the textbook formula and jStat's t distribution", () => {
  fc.assert(
    fc.property(scores, (pairs) => {
      const { before, after } = split(pairs);
      const changes = after.map((score, i) => score - before[i]!);
      const n = changes.length;
      const centre = changes.reduce((a, b) => a + b) / n;
      const squares = changes.reduce((a, b) => a + (b - centre) ** 2, 0);
      fc.pre(squares > 1e-6);
      const t = centre / Math.sqrt(squares / (n - 1) / n);
      const result = pairedChange(before, after, 0.95);
      expect(result.t).toBeCloseTo(t, 8);
      expect(result.p).toBeCloseTo(2 * jstat.jStat.studentt.cdf(-Math.abs(t), n - 1), 7);
    }),
  );
});

test("swapping before and after turns the change around", () => {
  fc.assert(
    fc.property(scores, (pairs) => {
      const { before, after } = split(pairs);
      const [there, back] = [pairedChange(before, after, 0.9), pairedChange(after, before, 0.9)];
      expect(back.meanChange).toBeCloseTo(-there.meanChange, 10);
      expect(back.p).toEqual(typeof there.p === "number" ? expect.closeTo(there.p, 10) : there.p);
    }),
  );
});

test("one athlete has a change and nothing more", () => {
  const result = pairedChange([100], [104], 0.95);
  expect(result).toMatchObject({ n: 1, meanChange: 4, meanBefore: 100, meanAfter: 104 });
  for (const part of ["sdOfChange", "standardError", "low", "high", "t", "df", "p"] as const) {
    expect(reasonOf(result[part])).toMatch(/single value/);
  }
  expect(reasonOf(result.effectSize)).toMatch(/at least 3/);
});

test("two athletes have a test but no effect size", () => {
  const result = pairedChange([100, 110], [104, 111], 0.95);
  expect(result.df).toBe(1);
  expect(result.p).toBeTypeOf("number");
  expect(reasonOf(result.effectStandardError)).toMatch(/at least 3/);
});

test("equal gains in decimals are equal: there is no t of a million", () => {
  const result = pairedChange([10.1, 15.3, 7.7], [10.4, 15.6, 8], 0.95);
  expect(result.meanChange).toBe(0.3);
  expect(result.sdOfChange).toBe(0);
  expect(reasonOf(result.p)).toMatch(/do not vary/);
  expect(reasonOf(result.low)).toMatch(/do not vary/);
  expect(result.effectSize).toBeTypeOf("number");
});

test("columns that do not change at all have an effect of 0 and no standard error of it", () => {
  const result = pairedChange([1, 2, 3], [1, 2, 3], 0.95);
  expect(result.effectSize).toBe(0);
  expect(reasonOf(result.effectStandardError)).toMatch(/the same/);
});

test("a column without spread has no effect size", () => {
  expect(reasonOf(pairedChange([5, 5, 5], [6, 7, 8], 0.95).effectSize)).toMatch(/before/);
  const flat = pairedChange([6, 7, 8], [9, 9, 9], 0.95);
  expect(flat.effectSize).toBeTypeOf("number");
  expect(reasonOf(flat.effectStandardError)).toMatch(/after/);
});

test("columns must pair up and hold somebody", () => {
  expect(() => pairedChange([1, 2], [1], 0.95)).toThrow(BadInput);
  expect(() => pairedChange([], [], 0.95)).toThrow(NoAnswer);
});

test("no scores give anything but numbers and reasons", () => {
  const coarse = fc.integer({ min: -2, max: 2 });
  fc.assert(
    fc.property(fc.array(fc.tuple(coarse, coarse), { maxLength: 5 }), (pairs) => {
      const { before, after } = split(pairs);
      expectNoNonsense(() => pairedChange(before, after, 0.95));
    }),
    { numRuns: 400 },
  );
});
