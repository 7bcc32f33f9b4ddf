import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import { sdFromInterval } from "../../../src/core/studies/sdFromInterval";
import { sdOfChange } from "../../../src/core/studies/sdOfChange";
import { seFromInterval } from "../../../src/core/studies/seFromInterval";
import {
  studyChangeDifference,
  type ChangeSummary,
} from "../../../src/core/studies/studyChangeDifference";
import { studyDifference } from "../../../src/core/studies/studyDifference";
import { hedgesCorrection } from "../../../src/core/statistics/distributions";
import { expectAllNear, expectNear, expectPrinted } from "./matching";

type Six = readonly [number, number, number, number, number, number];
const differenceOf = ([meanA, sdA, nA, meanB, sdB, nB]: Six, confidence?: number) =>
  studyDifference({ mean: meanA, sd: sdA, n: nA }, { mean: meanB, sd: sdB, n: nB }, confidence);

describe("the difference of two groups in a paper's table", () => {
  it("is the NIST/SEMATECH e-Handbook's t test of car mileage, 1.3.5.3", () => {
    const result = differenceOf([20.14458, 6.4147, 249, 30.48101, 6.10771, 79]);
    expectPrinted(result.t, "-12.946");
    expectPrinted(result.df, "136.8750");
    // R: qt, pt; effect size metafor::escalc("SMD").
    expectAllNear(result, {
      difference: -10.33643,
      standardError: 0.79841004,
      low: -11.9152438,
      high: -8.75761622,
      t: -12.9462676,
      df: 136.87499,
      effectSize: -1.62593057,
      effectStandardError: 0.143889703,
      effectLow: -1.90794921,
      effectHigh: -1.34391194,
    });
    expectNear(result.p, 1.57090462e-25, 1e-4);
  });

  it("is the NAG Library's example of G07CAF", () => {
    const result = differenceOf([25, 0.8185, 4, 21, 4.208, 8]);
    // NAG's printed results, from data whose summary above is itself rounded.
    expectAllNear(result, { t: 2.5922, df: 8, p: 0.032, low: 0.441, high: 7.559 }, 1e-3);
    expectAllNear(result, {
      difference: 4,
      standardError: 1.54301444,
      low: 0.441233358,
      high: 7.55876664,
      t: 2.5923283,
      df: 7.99265865,
      p: 0.0320213257,
      effectSize: 1.03997881,
      effectStandardError: 0.648124085,
      effectLow: -0.230321058,
      effectHigh: 2.31027867,
    });
  });

  it("as an effect size is that of the six studies of Borenstein et al. 2009, chapter 14", () => {
    const rows: [Six, string, number, number][] = [
      [[94, 22, 60, 92, 20, 60], "0.0945", 0.0945241585, 0.182676112],
      [[98, 21, 65, 92, 22, 65], "0.2774", 0.277355866, 0.176252946],
      [[98, 28, 40, 88, 26, 40], "0.3665", 0.36654443, 0.225476645],
      [[94, 19, 200, 82, 17, 200], "0.6644", 0.664384968, 0.102721756],
      [[98, 21, 50, 88, 22, 45], "0.4618", 0.461806281, 0.208193827],
      [[96, 21, 85, 92, 22, 85], "0.1852", 0.185164437, 0.153721347],
    ];
    for (const [row, printed, effectSize, effectStandardError] of rows) {
      const result = differenceOf(row);
      expectPrinted(result.effectSize, printed);
      // metafor::escalc(measure = "SMD").
      expectAllNear(result, { effectSize, effectStandardError });
    }
  });

  it("as an effect size is that of the same book's chapter 4, with the exact correction", () => {
    const result = differenceOf([103, 5.5, 50, 100, 4.5, 50]);
    expectNear(result.effectSize / hedgesCorrection(98), 0.597, 1e-3);
    expectNear(result.effectSize, 0.5924, 1e-3);
    expectAllNear(result, { effectSize: 0.592439623, effectStandardError: 0.204340215 });
  });

  it("turns its sign with the groups, and keeps effect size and t through a change of unit", () => {
    const group = fc.record({
      mean: fc.double({ min: -100, max: 100, noNaN: true }),
      sd: fc.double({ min: 0.1, max: 50, noNaN: true }),
      n: fc.integer({ min: 2, max: 300 }),
    });
    fc.assert(
      fc.property(group, group, (a, b) => {
        const there = studyDifference(a, b);
        const back = studyDifference(b, a);
        expect(back.difference).toBeCloseTo(-there.difference, 10);
        expect(back.low).toBeCloseTo(-there.high, 8);
        expect(back.effectLow).toBeCloseTo(-there.effectHigh, 10);
        const inPounds = (g: typeof a) => ({ ...g, mean: g.mean * 2.2, sd: g.sd * 2.2 });
        const pounds = studyDifference(inPounds(a), inPounds(b));
        expect(pounds.t).toBeCloseTo(there.t, 8);
        expect(pounds.effectSize).toBeCloseTo(there.effectSize, 10);
        expect(there.df).toBeLessThanOrEqual((a.n + b.n - 2) * (1 + 1e-12));
        expect(there.df).toBeGreaterThanOrEqual((Math.min(a.n, b.n) - 1) * (1 - 1e-12));
      }),
    );
  });

  it("refuses what cannot be, by name", () => {
    expect(() => differenceOf([1, 0, 10, 1, 1, 10])).toThrow(
      new BadInput("sdA is 0; expected a number above 0"),
    );
    expect(() => differenceOf([1, 1, 10, 1, -1, 10])).toThrow("sdB");
    expect(() => differenceOf([1, 1, 1, 1, 1, 10])).toThrow("nA is 1");
    expect(() => differenceOf([1, 1, 10, 1, 1, 10.5])).toThrow("nB is 10.5");
    expect(() => differenceOf([NaN, 1, 10, 1, 1, 10])).toThrow("meanA");
    expect(() => differenceOf([1, 1, 10, 1, 1, 10], 1)).toThrow("confidence is 1");
  });
});

type Eight = readonly [number, number, number, number, number, number, number, number];
const groups = (row: Eight): [ChangeSummary, ChangeSummary] => [
  { before: row[0], after: row[1], sdBefore: row[2], n: row[3] },
  { before: row[4], after: row[5], sdBefore: row[6], n: row[7] },
];

describe("the difference of two groups' changes in a paper's table", () => {
  it("is that of five training studies in Morris 2008, Table 5 (Carlson and Schmidt 1999)", () => {
    const rows: [Eight, number, string, number, number][] = [
      [[30.6, 38.5, 15.0, 20, 23.1, 19.7, 13.8, 20], 0.47, "0.77", 0.768447647, 0.340205828],
      [[23.5, 26.8, 3.1, 50, 24.9, 25.3, 4.1, 42], 0.64, "0.80", 0.800986848, 0.188090993],
      [[0.5, 0.7, 0.1, 9, 0.6, 0.6, 0.2, 9], 0.77, "1.20", 1.20451641, 0.398300433],
      [[53.4, 75.9, 14.5, 10, 55.7, 60.7, 17.3, 11], 0.89, "1.05", 1.04762674, 0.275668757],
      [[35.6, 36.0, 4.7, 14, 34.8, 33.4, 3.1, 14], 0.44, "0.44", 0.438934193, 0.409172398],
    ];
    for (const [row, correlation, printed, effectSize, effectStandardError] of rows) {
      const result = studyChangeDifference(...groups(row), correlation);
      expectPrinted(result.effectSize, printed);
      expectAllNear(result, {
        difference: row[1] - row[0] - (row[5] - row[4]),
        effectSize,
        effectStandardError,
        effectLow: effectSize - 1.95996398 * effectStandardError,
        effectHigh: effectSize + 1.95996398 * effectStandardError,
      });
    }
  });

  it("has the variance of Morris 2008, Table 2", () => {
    const table: [effect: number, printed: string[]][] = [
      [0, ["0.413", "0.162", "0.080", "0.227", "0.089", "0.044", "0.041", "0.016", "0.008"]],
      [0.5, ["0.421", "0.164", "0.082", "0.235", "0.092", "0.046", "0.049", "0.019", "0.009"]],
      [1, ["0.444", "0.173", "0.086", "0.259", "0.100", "0.049", "0.073", "0.027", "0.013"]],
    ];
    for (const [effect, printed] of table) {
      const cells = [0, 0.45, 0.9].flatMap((correlation) =>
        [10, 25, 50].map((n) => ({ correlation, n })),
      );
      cells.forEach(({ correlation, n }, i) => {
        const gain = effect / hedgesCorrection(2 * n - 2);
        const result = studyChangeDifference(
          { before: 0, after: gain, sdBefore: 1, n },
          { before: 0, after: 0, sdBefore: 1, n },
          correlation,
        );
        expectPrinted(result.effectStandardError ** 2, printed[i]!);
      });
    }
  });

  it("is surer the closer before and after go together, its size the same", () => {
    const [a, b] = groups([30.6, 38.5, 15.0, 20, 23.1, 19.7, 13.8, 20]);
    const of = (correlation: number) => studyChangeDifference(a, b, correlation);
    expect(of(0.9).effectSize).toBe(of(0.1).effectSize);
    expect(of(0.9).effectStandardError).toBeLessThan(of(0.1).effectStandardError);
    expect(of(1).effectStandardError).toBeGreaterThan(0);
    expect(of(-1).effectStandardError).toBeGreaterThan(of(0).effectStandardError);
  });

  it("is exactly 0 for changes that are equal in decimals", () => {
    const [a, b] = groups([5.3, 10.3, 2, 10, 0.3, 5.3, 2, 10]);
    expect(studyChangeDifference(a, b, 0.5).difference).toBe(0);
  });

  it("refuses what cannot be, by name", () => {
    const [a, b] = groups([1, 2, 1, 10, 1, 2, 1, 10]);
    expect(() => studyChangeDifference(a, b, 1.1)).toThrow(
      new BadInput("correlation is 1.1; expected a number from −1 to 1"),
    );
    expect(() => studyChangeDifference(a, b, NaN)).toThrow("correlation is NaN");
    expect(() => studyChangeDifference({ ...a, sdBefore: 0 }, b, 0.5)).toThrow("sdBeforeA is 0");
    expect(() => studyChangeDifference(a, { ...b, n: 1 }, 0.5)).toThrow("nB is 1");
    expect(() => studyChangeDifference({ ...a, n: 2 }, { ...b, n: 2 }, 0.5)).toThrow(NoAnswer);
  });
});

describe("the standard deviation of changes", () => {
  it("is the Cochrane Handbook's (5.1, 16.4.6.4): over √10 people, 0.583", () => {
    expectPrinted(sdOfChange(2.38, 2.21, 0.68) / Math.sqrt(10), "0.583");
    expectNear(sdOfChange(2.38, 2.21, 0.68), 1.84259925);
  });

  it("lies between the difference and the sum of the two", () => {
    expect(sdOfChange(3, 2, 1)).toBe(1);
    expect(sdOfChange(3, 2, -1)).toBe(5);
    expect(sdOfChange(3, 4, 0)).toBe(5);
    expect(sdOfChange(2.2, 2.2, 1)).toBe(0);
  });

  it("refuses what cannot be, by name", () => {
    expect(() => sdOfChange(0, 2, 0.5)).toThrow(BadInput);
    expect(() => sdOfChange(0, 2, 0.5)).toThrow("sdBefore is 0");
    expect(() => sdOfChange(1, -2, 0.5)).toThrow("sdAfter is -2");
    expect(() => sdOfChange(1, 2, -1.01)).toThrow("correlation is -1.01");
  });
});

describe("what lies behind a confidence interval", () => {
  it("is the SD by the Cochrane Handbook's divisor for 25 people, 4.128", () => {
    expectPrinted(sdFromInterval(1, 5.128, 25), "5.000");
    // R: qt.
    expectNear(sdFromInterval(35, 41.5, 12), 5.11513228);
    expectNear(sdFromInterval(35, 41.5, 12, 0.9), 6.26896009);
  });

  it("is the SE by the Cochrane Handbook's divisors 3.92, 3.29 and 5.15", () => {
    for (const se of [
      seFromInterval(1, 4.92),
      seFromInterval(1, 4.29, 0.9),
      seFromInterval(1, 6.15, 0.99),
    ]) {
      expectNear(se, 1, 5e-4);
    }
    // R: qnorm, qt.
    expectNear(seFromInterval(0.2, 0.9), 0.17857471);
    expectNear(seFromInterval(0.2, 0.9, 0.95, 22), 0.168766356);
  });

  it("is the SE the interval was built from", () => {
    const { low, high, standardError, df } = differenceOf([25, 0.8185, 4, 21, 4.208, 8], 0.9);
    expectNear(seFromInterval(low, high, 0.9, df), standardError, 1e-12);
  });

  it("refuses what cannot be, by name", () => {
    expect(() => seFromInterval(2, 1)).toThrow(
      new BadInput("low is 2 and high is 1; expected low below high"),
    );
    expect(() => seFromInterval(2, 2)).toThrow(BadInput);
    expect(() => seFromInterval(NaN, 2)).toThrow("low is NaN");
    expect(() => seFromInterval(1, 2, 0.95, 0)).toThrow("df is 0");
    expect(() => seFromInterval(1, 2, 0)).toThrow("confidence");
    expect(() => sdFromInterval(1, 2, 1)).toThrow("n is 1");
    expect(() => sdFromInterval(3, 2, 10)).toThrow("low is 3");
  });
});
