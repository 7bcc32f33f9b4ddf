import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import { groupChange } from "../../../src/core/testing/groupChange";
import { morrisEffect } from "../../../src/core/testing/morrisEffect";
import { testTable } from "../../../src/core/testing/testTable";
import { expectAllNear } from "../studies/matching";
import { expectNoNonsense, reasonOf } from "./finite";
import { orthodont } from "./published";

const boys = orthodont("boys", 8, 14);
const girls = orthodont("girls", 8, 14);

describe("Potthoff and Roy 1964, Biometrika 51:313-326, boys and girls at 8 and 14", () => {
  const result = groupChange(boys, girls, 0.95);

  test("has the values of R 4.2.2 (t.test on changes; the adjusted difference by its definition)", () => {
    expectAllNear(result, {
      nA: 16,
      changeA: 4.59375,
      lowA: 3.16983791,
      highA: 6.01766209,
      pA: 5.26663026e-6,
      nB: 11,
      changeB: 2.90909091,
      lowB: 2.02268232,
      highB: 3.7954995,
      pB: 2.56351647e-5,
      difference: 1.68465909,
      standardError: 0.777530402,
      low: 0.0768174867,
      high: 3.2925007,
      t: 2.16667938,
      df: 23.1568375,
      p: 0.0407909043,
      adjustedDifference: 2.53046836,
      adjustedStandardError: 0.784105419,
      adjustedLow: 0.911463665,
      adjustedHigh: 4.14947305,
      adjustedDf: 23.808076,
      adjustedP: 0.00361998204,
      effectSize: 0.701952289,
      extraSpread: 2.32372888,
      extraSpreadLow: 0.733657402,
      extraSpreadHigh: 3.92468241,
      extraSpreadP: 0.0146871008,
    });
  });

  test("has the standard error of Morris 2008, Organ Res Methods 11:364-386, equation 25", () => {
    expectAllNear(result, { effectStandardError: 0.401045452 });
  });

  test("reads as the adjusted difference does, with the groups' own names", () => {
    expect(result.groupA).toBe("boys");
    expect(result.reading).toBe("from the same starting score, boys ended higher than girls");
  });

  test("turns around when the groups are swapped", () => {
    const swapped = groupChange(girls, boys, 0.95);
    expectAllNear(swapped, {
      difference: -1.68465909,
      adjustedDifference: -2.53046836,
      adjustedP: 0.00361998204,
      effectSize: -0.701952289,
      extraSpreadP: 1 - 0.0146871008,
    });
    expect(reasonOf(swapped.extraSpread)).toMatch(/no more/);
    expect(swapped.reading).toBe("from the same starting score, girls ended lower than boys");
  });
});

describe("a battery of two measures of the same children (R 4.2.2 and SciPy 1.17; Holm: p.adjust)", () => {
  const rows = testTable(
    [
      { measure: "8 to 14", a: boys, b: girls },
      { measure: "10 to 12", a: orthodont("boys", 10, 12), b: orthodont("girls", 10, 12) },
    ],
    0.95,
  );

  test("has a row a measure, Holm's p (Holm 1979, Scand J Stat 6:65-70) beside the plain one", () => {
    expect(rows.map(({ measure }) => measure)).toEqual(["8 to 14", "10 to 12"]);
    expectAllNear(rows[0]!, {
      nA: 16,
      nB: 11,
      beforeA: 22.875,
      afterA: 27.46875,
      changeA: 4.59375,
      beforeB: 21.1818182,
      afterB: 24.0909091,
      changeB: 2.90909091,
      adjustedDifference: 2.53046836,
      low: 0.911463665,
      high: 4.14947305,
      p: 0.00361998204,
      holmP: 0.00723996408,
      effectSize: 0.701952289,
    });
    expectAllNear(rows[1]!, {
      nA: 16,
      nB: 11,
      beforeA: 23.8125,
      afterA: 25.71875,
      changeA: 1.90625,
      beforeB: 22.2272727,
      afterB: 23.0909091,
      changeB: 0.863636364,
      adjustedDifference: 1.51900831,
      low: -0.195842542,
      high: 3.23385916,
      p: 0.0797682369,
      holmP: 0.0797682369,
      effectSize: 0.494197432,
    });
  });

  test("leaves a measure without a p out of the correction", () => {
    const tooFew = {
      measure: "too few",
      a: { name: "boys", before: [20], after: [21] },
      b: { name: "girls", before: [19], after: [20] },
    };
    const mixed = testTable([tooFew, { measure: "8 to 14", a: boys, b: girls }], 0.95);
    expect(reasonOf(mixed[0]!.holmP)).toMatch(/at least 3/);
    expectAllNear(mixed[1]!, { holmP: 0.00361998204 });
  });
});

describe("what decides is the difference between the groups", () => {
  test("not one group's small p beside the other's large one", () => {
    // Both groups gained about as much; only A's own gain is clear.
    const a = { name: "heavy", before: [80, 85, 90, 95, 100], after: [84, 88, 95, 99, 105] };
    const b = { name: "light", before: [81, 86, 89, 96, 99], after: [93, 81, 99, 95, 105] };
    const result = groupChange(a, b, 0.95);
    expect(result.pA).toBeLessThan(0.01);
    expect(result.pB).toBeGreaterThan(0.2);
    expect(result.reading).toBe(
      "no difference between heavy and light shown, which does not show they are the same",
    );
  });

  test("and it may be clear although neither group's own change is", () => {
    const a = { name: "A", before: [10, 20, 30, 40, 50], after: [14, 21, 29, 44, 54] };
    const b = { name: "B", before: [10, 20, 30, 40, 50], after: [7, 20, 26, 40, 45] };
    const result = groupChange(a, b, 0.95);
    expect(result.pA).toBeGreaterThan(0.05);
    expect(result.pB).toBeGreaterThan(0.05);
    expect(result.adjustedP).toBeLessThan(0.05);
    expect(result.reading).toBe("from the same starting score, A ended higher than B");
  });

  test("and it stays open where there is not enough to judge by", () => {
    const a = { name: "A", before: [10], after: [14] };
    const b = { name: "B", before: [10, 12], after: [11, 13] };
    expect(groupChange(a, b, 0.95).reading).toBe("not enough to go by to compare A and B");
  });
});

const group = (name: string, least: number) =>
  fc
    .array(fc.tuple(fc.integer({ min: 500, max: 999 }), fc.integer({ min: 500, max: 999 })), {
      minLength: least,
      maxLength: 20,
    })
    .map((pairs) => ({
      name,
      before: pairs.map(([before]) => before / 10),
      after: pairs.map(([, after]) => after / 10),
    }));

test("Welch's test is the textbook's, by jStat's t distribution", () => {
  const moments = ({ before, after }: { before: number[]; after: number[] }) => {
    const changes = after.map((score, i) => score - before[i]!);
    const n = changes.length;
    const centre = changes.reduce((x, y) => x + y) / n;
    const v = changes.reduce((x, y) => x + (y - centre) ** 2, 0) / (n - 1);
    return { n, centre, v, part: v / n };
  };
  fc.assert(
    fc.property(group("A", 2), group("B", 2), (groupA, groupB) => {
      const [a, b] = [moments(groupA), moments(groupB)];
      fc.pre(a.part + b.part > 1e-6);
      const t = (a.centre - b.centre) / Math.sqrt(a.part + b.part);
      const df = (a.part + b.part) ** 2 / (a.part ** 2 / (a.n - 1) + b.part ** 2 / (b.n - 1));
      const result = groupChange(groupA, groupB, 0.95);
      expect(result.t).toBeCloseTo(t, 8);
      expect(result.df).toBeCloseTo(df, 8);
      expect(result.p).toBeCloseTo(2 * jstat.jStat.studentt.cdf(-Math.abs(t), df), 7);
    }),
  );
});

describe("Morris's effect", () => {
  test("needs 5 athletes", () => {
    const trial = { difference: 1, pooledSdBefore: 2, nA: 2, nB: 2, correlation: 0.5 };
    expect(() => morrisEffect(trial)).toThrow(NoAnswer);
    expect(morrisEffect({ ...trial, nB: 3 }).effectStandardError).toBeGreaterThan(0);
  });

  test("is surer the closer before and after go together", () => {
    const trial = { difference: 1, pooledSdBefore: 2, nA: 12, nB: 12 };
    const error = (correlation: number) =>
      morrisEffect({ ...trial, correlation }).effectStandardError;
    expect(error(0.9)).toBeLessThan(error(0.5));
    expect(error(0.5)).toBeLessThan(error(-0.5));
  });

  test("of very large groups has the variance of large samples", () => {
    // For large n: 2 (1 − r) (1/nA + 1/nB) + g² / (2 m), Morris 2008 with J and m / (m − 2) expanded.
    const [n, g, r] = [1e6, 0.5, 0.4];
    const { effectStandardError } = morrisEffect({
      difference: g,
      pooledSdBefore: 1,
      nA: n,
      nB: n,
      correlation: r,
    });
    const expected = 2 * (1 - r) * (2 / n) + g ** 2 / (2 * (2 * n - 2));
    expect(effectStandardError ** 2 / expected).toBeCloseTo(1, 5);
  });
});

describe("scores near the edge of arithmetic", () => {
  test("have finite tests, whatever the unit", () => {
    for (const unit of [1e-90, 1e80]) {
      const scaled = ({ name, before, after }: typeof boys) => ({
        name,
        before: before.map((score) => score * unit),
        after: after.map((score) => score * unit),
      });
      const result = groupChange(scaled(boys), scaled(girls), 0.95);
      expectAllNear(result, { df: 23.1568375, adjustedDf: 23.808076, extraSpreadP: 0.0146871008 });
      expectNoNonsense(() => result);
    }
  });
});

describe("degenerate groups", () => {
  const four = { name: "A", before: [10, 20, 30, 40], after: [12, 22, 32, 42] };

  test("that all gained the same have means but no tests", () => {
    const result = groupChange(four, { ...four, name: "B" }, 0.95);
    expect(result.difference).toBe(0);
    expect(reasonOf(result.p)).toMatch(/do not vary/);
    expect(reasonOf(result.adjustedP)).toMatch(/do not vary/);
    expect(reasonOf(result.effectStandardError)).toMatch(/alike/);
    expect(reasonOf(result.extraSpread)).toMatch(/no more/);
    expect(reasonOf(result.extraSpreadLow)).toMatch(/spread of 0/);
  });

  test("whose scores before are all the same have no effect size and no adjustment", () => {
    const flat = { before: [10, 10, 10], after: [11, 13, 12] };
    const result = groupChange({ name: "A", ...flat }, { name: "B", ...flat }, 0.95);
    expect(reasonOf(result.effectSize)).toMatch(/before do not vary/);
    expect(reasonOf(result.adjustedDifference)).toMatch(/before do not vary/);
    expect(result.p).toBeTypeOf("number");
  });

  test("of one athlete have a change and no spread", () => {
    const result = groupChange(
      { name: "A", before: [10], after: [14] },
      { ...four, name: "B" },
      0.95,
    );
    expect(result.changeA).toBe(4);
    expect(reasonOf(result.lowA)).toMatch(/single value/);
    expect(reasonOf(result.p)).toMatch(/group of one/);
    expect(reasonOf(result.extraSpread)).toMatch(/single value/);
  });

  test("of nobody have no answer, and columns must pair up", () => {
    const empty = { name: "B", before: [], after: [] };
    expect(() => groupChange(four, empty, 0.95)).toThrow(NoAnswer);
    expect(() => groupChange(four, empty, 0.95)).toThrow(/B/);
    expect(() => groupChange(four, { ...empty, before: [1] }, 0.95)).toThrow(BadInput);
  });

  test("never give anything but numbers and reasons", () => {
    const coarse = fc.integer({ min: -1, max: 2 }).map((tenths) => tenths / 10);
    const few = fc.array(fc.tuple(coarse, coarse), { minLength: 1, maxLength: 4 });
    const named = (name: string, pairs: [number, number][]) => ({
      name,
      before: pairs.map(([before]) => before),
      after: pairs.map(([, after]) => after),
    });
    fc.assert(
      fc.property(few, few, (a, b) => {
        expectNoNonsense(() => groupChange(named("A", a), named("B", b), 0.95));
      }),
      { numRuns: 400 },
    );
  });
});
