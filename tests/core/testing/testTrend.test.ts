import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import { normalCdf } from "../../../src/core/statistics/normal";
import type { DatedScore } from "../../../src/core/testing/ownLine";
import { testTrend, type TestTrend } from "../../../src/core/testing/testTrend";
import { expectAllNear } from "../studies/matching";
import { reasonOf } from "./finite";
import { leastSquares } from "./leastSquares";

const DAYS = [46_000, 46_028, 46_056];
const tested = (scores: number[], days: number[] = DAYS): DatedScore[] =>
  scores.map((score, i) => ({ date: days[i]!, score }));
const three = [tested([100, 104, 110]), tested([120, 121, 125]), tested([90, 97, 99])];
const numbersOf = (trend: TestTrend | undefined) => trend as Record<keyof TestTrend, number>;

describe("three athletes on three test days", () => {
  const [a, b, c] = testTrend(three, 7, 0.95);

  test("have the values computed in R", () => {
    expectAllNear(a!, {
      tests: 3,
      slope: 1.25,
      low: 0.43258681,
      high: 2.06741319,
      shrunkSlope: 1.12869287,
      next: 110.310131,
      nextLow: 104.863536,
      nextHigh: 115.499818,
    });
    expectAllNear(b!, {
      slope: 0.625,
      low: -0.19241319,
      high: 1.44241319,
      shrunkSlope: 0.8069607,
      next: 126.034803,
      nextLow: 120.848863,
      nextHigh: 131.601518,
    });
    expectAllNear(c!, {
      slope: 1.125,
      low: 0.30758681,
      high: 1.94241319,
      shrunkSlope: 1.06434643,
      next: 100.655065,
      nextLow: 95.3076155,
      nextHigh: 105.873103,
    });
  });
});

/**
 * Where the next score lies by force: the midpoint rule over the two spreads, and for each pair the density and
 * the normal distributions as the model has them.
 */
function nextBelow(athletes: DatedScore[][], per: number, who: number) {
  const lines = athletes.map((tests) => {
    const x = tests.map(({ date }) => date / per);
    const fit = leastSquares(
      x.map((at) => [1, at - x[0]!]),
      tests.map(({ score }) => score),
    );
    const centre = x.reduce((sum, at) => sum + at, 0) / x.length;
    const y = tests.reduce((sum, { score }) => sum + score, 0) / x.length;
    const spread = x.reduce((sum, at) => sum + (at - centre) ** 2, 0);
    const slope = fit.coefficients[1]!;
    const residual = tests.reduce(
      (sum, { score }, i) => sum + (score - y - slope * (x[i]! - centre)) ** 2,
      0,
    );
    const [first, last] = [Math.min(...x), Math.max(...x)];
    return {
      n: x.length,
      slope,
      spread,
      residual,
      y,
      span: last - first,
      ahead: last + 1 - centre,
    };
  });
  const total = (of: (line: (typeof lines)[number]) => number) =>
    lines.reduce((sum, line) => sum + of(line), 0);
  const df = total(({ n }) => n - 2);
  const s = Math.sqrt(total(({ residual }) => residual) / df);
  const scale = (4 * s) / (total(({ span }) => span) / lines.length);
  const points: { log: number; mean: number; sd: number }[] = [];
  for (let u = -1.5; u < 4; u += 0.02) {
    for (let omega = scale / 200; omega < 6 * scale; omega += scale / 100) {
      const sigma = s * Math.exp(u);
      const own = lines.map(({ spread }) => sigma ** 2 / spread);
      const weight = own.map((v) => 1 / (omega ** 2 + v));
      const whole = weight.reduce((sum, w) => sum + w, 0);
      const middle = weight.reduce((sum, w, i) => sum + w * lines[i]!.slope, 0) / whole;
      let log = -(omega ** 2) / (2 * scale ** 2) - Math.log(whole) / 2;
      log += -df * u - (df / 2) * Math.exp(-2 * u);
      weight.forEach(
        (w, i) => (log += Math.log(w) / 2 - (w * (lines[i]!.slope - middle) ** 2) / 2),
      );
      const { slope, n, y, ahead } = lines[who]!;
      const kept = omega ** 2 * weight[who]!;
      const variance = kept * own[who]! + (1 - kept) ** 2 / whole;
      points.push({
        log,
        mean: y + (middle + kept * (slope - middle)) * ahead,
        sd: Math.sqrt(variance * ahead ** 2 + sigma ** 2 * (1 + 1 / n)),
      });
    }
  }
  const highest = points.reduce((most, { log }) => Math.max(most, log), -Infinity);
  const weights = points.map(({ log }) => Math.exp(log - highest));
  const all = weights.reduce((sum, w) => sum + w, 0);
  return (score: number) =>
    points.reduce((sum, { mean, sd }, i) => sum + weights[i]! * normalCdf((score - mean) / sd), 0) /
    all;
}

test("the next score's interval is the model's sum by force, tests on different days and numbers of them", () => {
  const uneven = [
    tested([100, 104, 110, 111], [46_000, 46_021, 46_056, 46_090]),
    tested([120, 121, 125, 124, 130], [46_000, 46_000, 46_030, 46_050, 46_085]),
    tested([90, 97], [46_010, 46_056]),
  ];
  testTrend(uneven, 7, 0.95).forEach((trend, who) => {
    const below = nextBelow(uneven, 7, who);
    expect(below(numbersOf(trend).nextLow)).toBeCloseTo(0.025, 6);
    expect(below(numbersOf(trend).nextHigh)).toBeCloseTo(0.975, 6);
  });
});

test("one athlete alone has the line and the prediction of ordinary least squares, by jStat's t", () => {
  const score = fc.integer({ min: 800, max: 1200 }).map((tenths) => tenths / 10);
  fc.assert(
    fc.property(
      fc.array(score, { minLength: 3, maxLength: 8 }),
      fc.constantFrom(1, 7, 28),
      (scores, per) => {
        const days = scores.map((_, i) => 46_000 + 20 * i + (i % 3));
        const x = days.map((day) => (day - days[0]!) / per);
        const fit = leastSquares(
          x.map((at) => [1, at]),
          scores,
        );
        const [intercept, slope] = fit.coefficients as [number, number];
        const errors = scores.map((y, i) => y - intercept - slope * x[i]!);
        const s = Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / fit.df);
        fc.pre(s > 0.01);
        const t = jstat.jStat.studentt.inv(0.975, fit.df);
        const centre = x.reduce((sum, at) => sum + at, 0) / x.length;
        const spread = x.reduce((sum, at) => sum + (at - centre) ** 2, 0);
        const at = x.at(-1)! + 1;
        const reach = t * s * Math.sqrt(1 + 1 / x.length + (at - centre) ** 2 / spread);
        const [trend] = testTrend([tested(scores, days)], per, 0.95);
        const { low, high, shrunkSlope, next, nextLow, nextHigh } = numbersOf(trend);
        expect(trend!.slope).toBeCloseTo(slope, 7);
        expect(shrunkSlope).toBeCloseTo(slope, 7);
        expect((high - low) / (2 * t * fit.standardErrors[1]!)).toBeCloseTo(1, 5);
        expect(next).toBeCloseTo(intercept + slope * at, 6);
        expect((nextHigh - nextLow) / (2 * reach)).toBeCloseTo(1, 5);
        expect((nextHigh + nextLow) / 2).toBeCloseTo(next, 5);
      },
    ),
    { numRuns: 20 },
  );
});

describe("an athlete", () => {
  test("with two tests has a line through both, which says nothing of the scatter", () => {
    const [, , , pair] = testTrend([...three, tested([100, 108])], 7, 0.95);
    expect(pair).toMatchObject({ tests: 2, slope: 2 });
    expect(numbersOf(pair).shrunkSlope).toBeLessThan(2);
    expect(numbersOf(testTrend(three, 7, 0.95)[0]).low).toBe(
      numbersOf(testTrend([...three, tested([100, 108])], 7, 0.95)[0]).low,
    );
  });

  test("tested on one day only has a number of tests and nothing else, and moves nobody", () => {
    const once = tested([80, 82], [46_000, 46_000]);
    const result = testTrend([once, ...three], 7, 0.95);
    expect(result[0]!.tests).toBe(2);
    for (const key of ["slope", "low", "shrunkSlope", "next", "nextHigh"] as const) {
      expect(reasonOf(result[0]![key])).toMatch(/two different days/);
    }
    expect(result.slice(1)).toEqual(testTrend(three, 7, 0.95));
  });

  test("may be tested in any order", () => {
    expect(
      testTrend(
        three.map((tests) => [...tests].reverse()),
        7,
        0.95,
      )[0]!.next,
    ).toBeCloseTo(110.310131, 6);
  });
});

describe("the unit of time", () => {
  test("is the coach's: four weeks gain four times a week's, and the next test comes four weeks later", () => {
    const weekly = numbersOf(testTrend(three, 7, 0.95)[0]);
    const monthly = numbersOf(testTrend(three, 28, 0.95)[0]);
    expect(monthly.slope).toBeCloseTo(4 * weekly.slope, 9);
    expect(monthly.shrunkSlope).toBeCloseTo(4 * weekly.shrunkSlope, 7);
    expect(monthly.next).toBeCloseTo(weekly.next + 3 * weekly.shrunkSlope, 7);
  });

  test("is above 0", () => {
    expect(() => testTrend(three, 0, 0.95)).toThrow(BadInput);
    expect(() => testTrend(three, -7, 0.95)).toThrow(BadInput);
  });
});

describe("scores without scatter", () => {
  test("have slopes and next scores, but nothing to judge them by", () => {
    const [first] = testTrend([tested([100, 104, 108]), tested([90, 91, 92])], 28, 0.95);
    expect(first).toMatchObject({ slope: 4, shrunkSlope: 4, next: 112 });
    for (const key of ["low", "high", "nextLow", "nextHigh"] as const) {
      expect(reasonOf(first![key])).toMatch(/do not vary/);
    }
  });

  test("are told from tiny scatter whatever the unit", () => {
    const third = [tested([100 / 3, 101 / 3, 102 / 3])];
    expect(reasonOf(testTrend(third, 7, 0.95)[0]!.low)).toMatch(/do not vary/);
    for (const unit of [1e-60, 1e60]) {
      const scaled = three.map((tests) =>
        tests.map(({ date, score }) => ({ date, score: score * unit })),
      );
      expectAllNear(testTrend(scaled, 7, 0.95)[0]!, { nextLow: 104.863536 * unit });
    }
  });
});

test("needs three tests of somebody, and a confidence inside (0, 1)", () => {
  expect(() => testTrend([], 7, 0.95)).toThrow(NoAnswer);
  expect(() => testTrend([tested([100, 104]), tested([90, 91])], 7, 0.95)).toThrow(/three tests/);
  expect(() => testTrend(three, 7, 95)).toThrow(BadInput);
});
