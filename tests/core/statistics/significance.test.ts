import fc from "fast-check";
import { expect, test } from "vitest";
import { estimateTest, noTest } from "../../../src/core/statistics/estimateTest";
import { holm } from "../../../src/core/statistics/holm";
import { meanTest } from "../../../src/core/statistics/meanTest";
import { welchTest } from "../../../src/core/statistics/welch";

const ps = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 12 });

test("Holm's p values (R 4.2.2, p.adjust; Holm 1979, Scand J Stat 6:65-70)", () => {
  const near = (values: number[]) => values.map((value) => expect.closeTo(value, 12) as unknown);
  expect(holm([0.01, 0.02, 0.03])).toEqual(near([0.03, 0.04, 0.04]));
  expect(holm([0.04, 0.01, 0.3, 0.02])).toEqual(near([0.08, 0.04, 0.3, 0.06]));
  expect(holm([])).toEqual([]);
});

test("Holm's correction raises every p, keeps their order, and leaves a single one alone", () => {
  fc.assert(
    fc.property(ps, (values) => {
      const adjusted = holm(values);
      values.forEach((p, i) => {
        expect(adjusted[i]).toBeGreaterThanOrEqual(p);
        expect(adjusted[i]).toBeLessThanOrEqual(1);
        values.forEach((other, j) => {
          if (p < other) expect(adjusted[i]).toBeLessThanOrEqual(adjusted[j]!);
        });
      });
      expect(holm(values.slice(0, 1))).toEqual(values.slice(0, 1));
    }),
  );
});

test("the interval excludes 0 exactly where p is below 1 − confidence", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -10, max: 10, noNaN: true }),
      fc.double({ min: 0.01, max: 5, noNaN: true }),
      fc.double({ min: 1, max: 200, noNaN: true }),
      fc.constantFrom(0.5, 0.9, 0.95, 0.99),
      (estimate, error, df, confidence) => {
        const { low, high, p } = estimateTest(estimate, error, df, confidence);
        fc.pre(Math.abs((p as number) - (1 - confidence)) > 1e-9);
        const excludes = (low as number) > 0 || (high as number) < 0;
        expect(excludes).toBe((p as number) < 1 - confidence);
      },
    ),
  );
});

test("no spread, no test: the reason stands in every place", () => {
  const { df, ...flat } = estimateTest(3, 0, 8, 0.95);
  expect(df).toBe(8);
  for (const part of [flat.low, flat.high, flat.t, flat.p]) {
    expect(part).toHaveProperty("absent", expect.stringMatching(/do not vary/));
  }
  for (const part of Object.values(noTest("why"))) expect(part).toEqual({ absent: "why" });
});

test("a mean test of changes and Welch's test against a group of zeros lean the same way", () => {
  const changes = [3, 5, 4, 6, 2];
  expect(meanTest(changes, 0.95).t).toBeCloseTo(4 / Math.sqrt(2.5 / 5), 12);
  const welch = welchTest(changes, [0, 0, 0, 0], 0.95);
  expect(welch.t).toBeCloseTo(4 / Math.sqrt(2.5 / 5), 12);
  expect(welch.df).toBeCloseTo(4, 12);
});

test("Welch's degrees of freedom lie between the smaller group's and both groups'", () => {
  const values = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 2, maxLength: 15 });
  fc.assert(
    fc.property(values, values, (a, b) => {
      const { df } = welchTest(a, b, 0.95);
      fc.pre(typeof df === "number");
      expect(df).toBeGreaterThanOrEqual(Math.min(a.length, b.length) - 1 - 1e-9);
      expect(df).toBeLessThanOrEqual(a.length + b.length - 2 + 1e-9);
    }),
  );
});
