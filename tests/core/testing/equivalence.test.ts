import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BadInput } from "../../../src/core/problem";
import { equivalence } from "../../../src/core/testing/equivalence";
import { expectPrinted } from "../studies/matching";

describe("the yield example of the NCSS manual, as quoted in the tests of the R package TOSTER", () => {
  test("with pooled variance", () => {
    const result = equivalence(-8.1153846154, 51.114284608, 27, 110, 0.025);
    expectPrinted(result.pLowSide, "0.02821");
    expectPrinted(result.pHighSide, "0.01436");
    expectPrinted(result.p, "0.02821");
    expectPrinted(result.low, "-112.99323");
    expectPrinted(result.high, "96.76246");
    expect(result.reading).toBe("not shown to be the same");
  });

  test("with Welch's", () => {
    const result = equivalence(-8.1153846154, 53.618546885, 19.169002374, 110, 0.025);
    expectPrinted(result.pLowSide, "0.03628");
    expectPrinted(result.pHighSide, "0.02002");
    expectPrinted(result.low, "-120.27336");
    expectPrinted(result.high, "104.04259");
  });
});

test("the same means that the whole interval lies inside the margin", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -5, max: 5, noNaN: true }),
      fc.double({ min: 0.05, max: 3, noNaN: true }),
      fc.double({ min: 1, max: 100, noNaN: true }),
      fc.double({ min: 0.1, max: 6, noNaN: true }),
      fc.constantFrom(0.01, 0.05, 0.1),
      (difference, error, df, margin, alpha) => {
        const { low, high, p, reading } = equivalence(difference, error, df, margin, alpha);
        fc.pre(Math.abs(p - alpha) > 1e-9);
        const inside = low > -margin && high < margin;
        const beyond = low > margin || high < -margin;
        expect(p < alpha).toBe(inside);
        expect(reading).toBe(
          inside
            ? "the same within the margin"
            : beyond
              ? "different by more than the margin"
              : "not shown to be the same",
        );
      },
    ),
  );
});

test("a large p of a difference is no proof of sameness", () => {
  const result = equivalence(0.1, 4, 10, 2, 0.05);
  expect(result.p).toBeGreaterThan(0.05);
  expect(result.reading).toBe("not shown to be the same");
});

test("needs a margin, a standard error and degrees of freedom above 0, and an alpha below a half", () => {
  expect(() => equivalence(0, 1, 10, 0, 0.05)).toThrow(BadInput);
  expect(() => equivalence(0, 0, 10, 1, 0.05)).toThrow(BadInput);
  expect(() => equivalence(0, 1, 0, 1, 0.05)).toThrow(BadInput);
  expect(() => equivalence(0, 1, 10, 1, 0.5)).toThrow(BadInput);
  expect(() => equivalence(0, 1, 10, 1, 5)).toThrow(BadInput);
});
