import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import { wilsonInterval } from "../../../src/core/statistics/wilson";
import { responderDifference } from "../../../src/core/testing/responderDifference";
import { responders } from "../../../src/core/testing/responders";
import { responseShare } from "../../../src/core/testing/responseShare";
import { expectAllNear, expectNear, expectPrinted } from "../studies/matching";
import { expectNoNonsense, reasonOf } from "./finite";
import { sleep } from "./published";

describe("responders", () => {
  test("of Student's sleep data, a change of exactly the threshold not among them (R 4.2.2)", () => {
    const result = responders(sleep.before, sleep.after, 1, 0.95);
    expectAllNear(result, { n: 10, share: 0.7, low: 0.396778147, high: 0.892208733 });
    expect(result).toMatchObject({ responders: 7, noIncrease: 1 });
  });

  test("binary fractions do not make a responder", () => {
    expect(responders([0.1, 10.3], [0.3, 10.5], 0.2, 0.95).responders).toBe(0);
    expect(responders([0.1, 10.3], [0.31, 10.51], 0.2, 0.95).responders).toBe(2);
  });

  test("all of them, or none, still have an interval inside 0 to 1", () => {
    const all = responders([1, 2, 3], [5, 6, 7], 0, 0.95);
    expect(all).toMatchObject({ share: 1, high: 1, noIncrease: 0 });
    expect(all.low).toBeGreaterThan(0.3);
    const none = responders([5, 6, 7], [5, 6, 2], 0, 0.95);
    expect(none).toMatchObject({ share: 0, low: 0, noIncrease: 3 });
    expect(none.high).toBeLessThan(0.7);
  });

  test("of nobody have no answer", () => {
    expect(() => responders([], [], 0, 0.95)).toThrow(NoAnswer);
  });
});

describe("Wilson's interval", () => {
  test("has the printed limits (Newcombe 1998, Stat Med 17:857-872, Table I, method 3)", () => {
    const printed = [
      [81, 263, "0.2553", "0.3662"],
      [15, 148, "0.0624", "0.1605"],
      [0, 20, "0.0000", "0.1611"],
      [1, 29, "0.0061", "0.1718"],
    ] as const;
    for (const [count, n, low, high] of printed) {
      const interval = wilsonInterval(count, n, 0.95);
      expectPrinted(interval.low, low);
      expectPrinted(interval.high, high);
    }
  });

  test("ends where the share itself would just be rejected", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 500 }), fc.nat(), (n, pick) => {
        const count = 1 + (pick % (n - 1));
        const { share, low, high } = wilsonInterval(count, n, 0.95);
        for (const limit of [low, high]) {
          const z = Math.abs(share - limit) / Math.sqrt((limit * (1 - limit)) / n);
          expect(z).toBeCloseTo(1.959963985, 7);
        }
      }),
    );
  });
});

describe("the difference of two shares of responders", () => {
  // Intervals: Newcombe 1998, Stat Med 17:873-890, Table II, method 10. p: R 4.2.2, fisher.test.
  const published = [
    [56, 70, 48, 80, "0.0524", "0.3339", 0.0125211297],
    [9, 10, 3, 10, "0.1705", "0.8090", 0.0197666111],
    [6, 7, 2, 7, "0.0582", "0.8062", 0.102564103],
    [5, 56, 0, 29, "-0.0381", "0.1926", 0.160621443],
    [0, 10, 0, 20, "-0.1611", "0.2775", 1],
    [0, 10, 0, 10, "-0.2775", "0.2775", 1],
    [10, 10, 0, 20, "0.6791", "1.0000", 3.32833916e-8],
    [10, 10, 0, 10, "0.6075", "1.0000", 1.08250882e-5],
  ] as const;

  test.each(published)("%i of %i against %i of %i", (a, nA, b, nB, low, high, p) => {
    const result = responderDifference(a, nA, b, nB, 0.95);
    expectPrinted(result.low, low);
    expectPrinted(result.high, high);
    expectNear(result.p, p);
  });

  test("Fisher's tea tasting has the well-known p", () => {
    expectPrinted(responderDifference(3, 4, 1, 4, 0.95).p, "0.4857");
  });

  const counts = fc
    .tuple(fc.integer({ min: 1, max: 40 }), fc.nat())
    .map(([n, pick]): [number, number] => [pick % (n + 1), n]);

  test("Fisher's p is the exact sum over all tables no more likely", () => {
    const choose = (n: number, k: number): bigint => {
      let ways = 1n;
      for (let i = 1; i <= k; i++) ways = (ways * BigInt(n - k + i)) / BigInt(i);
      return ways;
    };
    fc.assert(
      fc.property(counts, counts, ([a, nA], [b, nB]) => {
        const ways = (x: number) => choose(nA, x) * choose(nB, a + b - x);
        const tables = [...Array(nA + 1).keys()].filter((x) => x <= a + b && a + b - x <= nB);
        const sum = tables
          .map(ways)
          .filter((w) => w <= ways(a))
          .reduce((x, y) => x + y, 0n);
        const exact = Number((sum * 10n ** 18n) / choose(nA + nB, a + b)) / 1e18;
        expect(responderDifference(a, nA, b, nB, 0.95).p).toBeCloseTo(exact, 10);
      }),
    );
  });

  test("the interval holds the difference, stays inside −1 to 1, and turns around with the groups", () => {
    fc.assert(
      fc.property(counts, counts, ([a, nA], [b, nB]) => {
        const result = responderDifference(a, nA, b, nB, 0.95);
        const swapped = responderDifference(b, nB, a, nA, 0.95);
        expect(result.low).toBeLessThanOrEqual(result.difference + 1e-12);
        expect(result.high).toBeGreaterThanOrEqual(result.difference - 1e-12);
        expect(result.low).toBeGreaterThanOrEqual(-1 - 1e-12);
        expect(result.high).toBeLessThanOrEqual(1 + 1e-12);
        expect(swapped.low).toBeCloseTo(-result.high, 12);
        expect(swapped.p).toBeCloseTo(result.p, 10);
      }),
    );
  });

  test("counts must be whole, and no more than the group", () => {
    expect(() => responderDifference(11, 10, 3, 10, 0.95)).toThrow(BadInput);
    expect(() => responderDifference(2.5, 10, 3, 10, 0.95)).toThrow(BadInput);
    expect(() => responderDifference(0, 0, 3, 10, 0.95)).toThrow(BadInput);
  });
});

describe("the share of responders without test error", () => {
  const squad = { meanChange: 5, sdChange: 6, typicalError: 2.5, threshold: 4, confidence: 0.95 };

  test("has the values of the normal distribution (R 4.2.2, pnorm)", () => {
    expectAllNear(responseShare(squad), {
      observedShare: 0.566183833,
      shareIfAllAlike: 0.611351295,
      shareWithoutNoise: 0.581715559,
      trueSd: 4.84767986,
    });
  });

  test("does not exist where the spread is no more than test error", () => {
    const result = responseShare({ ...squad, sdChange: 4, typicalError: 3 });
    expectNear(result.observedShare, 0.598706326);
    expect(reasonOf(result.trueSd)).toMatch(/test error alone/);
    expect(reasonOf(result.shareWithoutNoise)).toMatch(/test error alone/);
    expect(result.reading).toBe("say n to tell spread from test error");
  });

  test("nor where the two are equal but for binary dust", () => {
    for (const sdChange of [0.3 * Math.SQRT2, Math.sqrt(0.18)]) {
      const { trueSd } = responseShare({ ...squad, sdChange, typicalError: 0.3 });
      expect(reasonOf(trueSd)).toMatch(/test error alone/);
    }
  });

  test("has an interval and a p once it is known how many athletes it comes from (R 4.2.2)", () => {
    const known = responseShare({ ...squad, n: 20 });
    expectAllNear(known, { trueSdLow: 2.88451782, trueSdHigh: 8.0185848, p: 0.000025653074 });
    expect(known.reading).toBe("more spread than test error explains");
  });

  test("is told from test error less easily where the error is an estimate itself (R 4.2.2)", () => {
    const estimated = responseShare({ ...squad, n: 20, df: 9 });
    expectAllNear(estimated, { trueSdHigh: 8.05145203, p: 0.0535625153 });
    expect(estimated.trueSdLow).toBe(0);
    expect(estimated.reading).toBe("all may have changed alike");
  });

  test("has its interval also where there is none", () => {
    const result = responseShare({ ...squad, sdChange: 4, typicalError: 3, n: 20, df: 9 });
    expect(reasonOf(result.trueSd)).toMatch(/test error alone/);
    // Computed with SciPy 1.17 by the definition.
    expectAllNear(result, { trueSdHigh: 4.29683238, p: 0.607249986 });
    expect(result.trueSdLow).toBe(0);
    expect(result.reading).toBe("all may have changed alike");
  });

  test("says what is missing where n is", () => {
    const result = responseShare(squad);
    expect(reasonOf(result.p)).toMatch(/without n/);
    expect(reasonOf(result.trueSdLow)).toMatch(/without n/);
    expect(result.reading).toBe("say n to tell spread from test error");
  });

  test("takes a whole number of athletes, 2 or more", () => {
    for (const n of [1, 0, -3, 2.5]) expect(() => responseShare({ ...squad, n })).toThrow(BadInput);
  });

  test("true spread and test error add up to the spread seen", () => {
    const size = fc.double({ min: 0.01, max: 100, noNaN: true });
    fc.assert(
      fc.property(size, size, (trueSd, typicalError) => {
        const sd = Math.hypot(trueSd, Math.SQRT2 * typicalError);
        fc.pre(trueSd > 1e-3 * typicalError);
        const result = responseShare({ ...squad, sdChange: sd, typicalError });
        expect(result.trueSd).toSatisfy((found: number) => Math.abs(found / trueSd - 1) < 1e-6);
        expectNoNonsense(() => result);
      }),
    );
  });

  test("needs a spread and a typical error above 0", () => {
    expect(() => responseShare({ ...squad, sdChange: 0 })).toThrow(BadInput);
    expect(() => responseShare({ ...squad, typicalError: 0 })).toThrow(BadInput);
  });
});
