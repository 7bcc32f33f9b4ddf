import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import {
  type AdjustedDifference,
  adjustedDifference,
  type BeforeAfter,
} from "../../../src/core/testing/adjustedDifference";
import { expectAllNear } from "../studies/matching";
import { reasonOf } from "./finite";
import { leastSquares } from "./leastSquares";
import { orthodont } from "./published";

const small = {
  a: { before: [100, 110, 95, 120, 105], after: [108, 113, 106, 127, 110] },
  b: { before: [102, 98, 115, 108, 112, 90], after: [104, 101, 117, 109, 115, 93] },
};

describe("the adjusted difference", () => {
  test("of five and six athletes has the values computed in R", () => {
    expectAllNear(adjustedDifference(small.a, small.b, 0.95), {
      difference: 4.6492047,
      standardError: 1.32202878,
      low: 1.07502925,
      high: 8.22338016,
      df: 4.29182434,
      p: 0.0218447,
    });
  });

  // Potthoff and Roy 1964, Biometrika 51:313-326; computed with SciPy 1.17 by the definition.
  test("of boys and girls from 10 to 12 years has the values computed with SciPy", () => {
    const result = adjustedDifference(orthodont("boys", 10, 12), orthodont("girls", 10, 12), 0.95);
    expectAllNear(result, {
      difference: 1.51900831,
      standardError: 0.82715059,
      low: -0.195842542,
      high: 3.23385916,
      df: 22.123375952,
      p: 0.0797682369,
    });
  });
});

const group = (least: number) =>
  fc
    .array(fc.tuple(fc.integer({ min: 500, max: 999 }), fc.integer({ min: 500, max: 999 })), {
      minLength: least,
      maxLength: 14,
    })
    .map((pairs) => ({
      before: pairs.map(([before]) => before / 10),
      after: pairs.map(([, after]) => after / 10),
    }));

/**
 * The same from a full regression on group and score before, by what each single score adds to it: its weight
 * in the difference, and how much of it the fit takes up.
 */
function byRegression(a: BeforeAfter, b: BeforeAfter): Record<string, number> {
  const rows = [
    ...a.before.map((score) => [1, 1, score - 75]),
    ...b.before.map((score) => [1, 0, score - 75]),
  ];
  const scores = [...a.after, ...b.after];
  const fitted = (coefficients: number[], row: number[]) =>
    row.reduce((sum, x, i) => sum + x * coefficients[i]!, 0);
  const fit = leastSquares(rows, scores);
  const alone = rows.map((_, i) =>
    leastSquares(
      rows,
      rows.map((_, j) => (i === j ? 1 : 0)),
    ),
  );
  const part = (from: number, to: number) => {
    let [df, squares, weights] = [0, 0, 0];
    for (let i = from; i < to; i++) {
      df += 1 - fitted(alone[i]!.coefficients, rows[i]!);
      squares += (scores[i]! - fitted(fit.coefficients, rows[i]!)) ** 2;
      weights += alone[i]!.coefficients[1]! ** 2;
    }
    return { variance: (squares / df) * weights, df };
  };
  const [partA, partB] = [part(0, a.before.length), part(a.before.length, rows.length)];
  const variance = partA.variance + partB.variance;
  return {
    difference: fit.coefficients[1]!,
    standardError: Math.sqrt(variance),
    df: variance ** 2 / (partA.variance ** 2 / partA.df + partB.variance ** 2 / partB.df),
  };
}

test("is that of a full regression, each group with a residual variance of its own", () => {
  fc.assert(
    fc.property(group(3), group(3), (a, b) => {
      fc.pre(new Set(a.before).size > 1);
      const expected = byRegression(a, b);
      fc.pre(expected.standardError! > 1e-3);
      const result = adjustedDifference(a, b, 0.95) as Record<keyof AdjustedDifference, number>;
      expect(result.difference).toBeCloseTo(expected.difference!, 8);
      expect(result.standardError / expected.standardError!).toBeCloseTo(1, 7);
      expect(result.df / expected.df!).toBeCloseTo(1, 6);
      const t = result.difference / result.standardError;
      const p = 2 * jstat.jStat.studentt.cdf(-Math.abs(t), result.df);
      expect(result.p).toBeCloseTo(p, 7);
      expect((result.high - result.low) / 2 / result.standardError).toBeCloseTo(
        jstat.jStat.studentt.inv(0.975, result.df),
        4,
      );
    }),
  );
});

test("does not depend on the unit, however small or large its numbers", () => {
  const base = adjustedDifference(small.a, small.b, 0.95);
  for (const unit of [1e-140, 1e-90, 1e-3, 1e80, 1e140]) {
    const scaled = ({ before, after }: BeforeAfter) => ({
      before: before.map((score) => score * unit),
      after: after.map((score) => score * unit),
    });
    const result = adjustedDifference(scaled(small.a), scaled(small.b), 0.95);
    expectAllNear(result, { df: base.df as number, p: base.p as number });
    expectAllNear(result, { low: (base.low as number) * unit });
  }
});

describe("where there is too little to test by", () => {
  const pairs = { before: [10, 12], after: [11, 14] };

  test("groups of two keep their difference and nothing else", () => {
    const result = adjustedDifference(pairs, small.b, 0.95);
    expect(result.difference).toBeTypeOf("number");
    for (const key of ["standardError", "low", "high", "t", "df", "p"] as const) {
      expect(reasonOf(result[key])).toMatch(/at least 3 athletes in each group/);
    }
  });

  test("scores before that are all the same leave nothing to adjust by", () => {
    const flat = { before: [10, 10, 10], after: [11, 13, 12] };
    const result = adjustedDifference(flat, flat, 0.95);
    expect(reasonOf(result.difference)).toMatch(/before do not vary/);
    expect(reasonOf(result.p)).toMatch(/before do not vary/);
  });

  test("scores on one line have a standard error of 0 and no test", () => {
    const line = { before: [10, 20, 30], after: [12, 22, 32] };
    const result = adjustedDifference(line, { before: [15, 25, 5], after: [16, 26, 6] }, 0.95);
    expect(result).toMatchObject({ difference: 1, standardError: 0 });
    expect(reasonOf(result.low)).toMatch(/do not vary/);
    expect(reasonOf(result.df)).toMatch(/do not vary/);
  });

  test("one group on its line leaves the other's degrees of freedom", () => {
    const line = { before: [10, 20, 30], after: [12, 22, 32] };
    const mirrored = { before: [10, 20, 30, 40], after: [11, 19, 29, 41] };
    const { df, p } = adjustedDifference(line, mirrored, 0.95);
    expect(df).toBeCloseTo(3 - 500 / 700, 9);
    expect(p).toBeTypeOf("number");
  });
});
