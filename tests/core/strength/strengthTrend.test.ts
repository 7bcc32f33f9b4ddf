import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { equations, ownCurve } from "../../../src/core/strength/equations";
import { strengthTrend, trendSummary } from "../../../src/core/strength/strengthTrend";
import {
  usedSets,
  type LoggedSet,
  type TrendOptions,
} from "../../../src/core/strength/trend/usedSets";
import { elementAt } from "../../present";
import { denseTrend, type Settings } from "./denseTrend";
import { anyLog, trainingLog } from "./trendLogs";

const { epley, wathan, brzycki, lombardi, mayhew } = equations;
const usual: TrendOptions = { equation: epley };
const trend = strengthTrend(trainingLog, usual);

const near = (actual: number, expected: number, absolute = 1e-8) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(absolute);

describe("the strength trend, by its model", () => {
  const settings = fc.record({
    equation: fc.constantFrom(epley, wathan, brzycki, lombardi, mayhew, ownCurve(26)),
    reserveBias: fc.constantFrom(0, 0.7, -0.5),
    reserveSd: fc.constantFrom(0.5, 1, 1.8),
    maxReps: fc.constantFrom(12, 8),
    confidence: fc.constantFrom(0.95, 0.8),
    curveSd: fc.constantFrom(0.25, 0.1, 1e-9),
  });

  it("is what the whole normal distribution gives, written out without filter or sums", () => {
    fc.assert(
      fc.property(anyLog, settings, (log, given: Settings) => {
        const dense = denseTrend(log, given);
        fc.pre(dense.days.length >= 3);
        // With 1e-9 the curve is known to all digits, as with exactly 0.
        const curveSd = given.curveSd > 1e-9 ? given.curveSd : 0;
        const ours = strengthTrend(log, { ...given, curveSd });
        expect([ours.days, ours.sets]).toEqual([dense.days.length, dense.sets]);
        const last = dense.days.length - 1;
        for (const day of [0, last]) {
          const { mean, low, high } = dense.contrast({ [day]: 1 });
          const own = elementAt(ours.table, day);
          near(Math.log(own.oneRepMax), mean);
          near(Math.log(own.low), low);
          near(Math.log(own.high), high);
        }
        const rise = dense.contrast({ [last]: 1, 0: -1 });
        near(Math.log1p(ours.rise), rise.mean);
        near(Math.log1p(ours.riseLow), rise.low);
        near(Math.log1p(ours.riseHigh), rise.high);
        near(ours.chanceOfRise, rise.chance);
      }),
      { numRuns: 12 },
    );
  });

  it("agrees with the summary that a squad gets", () => {
    const { table, ...summary } = trend;
    expect(trendSummary(usedSets(trainingLog, usual), usual)).toEqual(summary);
    expect(table.at(-1)).toMatchObject({
      oneRepMax: trend.today,
      low: trend.low,
      high: trend.high,
    });
    expect(table).toHaveLength(trend.days);
  });
});

describe("the strength trend, as a coach sees it", () => {
  it("holds the tested maximum beside sets of 12 to failure (140 x 1 and 90 x 12, three days)", () => {
    const log = [46_000, 46_003, 46_007].flatMap((date): LoggedSet[] => [
      { date, load: 140, reps: 1, reserve: 0 },
      { date, load: 90, reps: 12, reserve: 0 },
    ]);
    const { today, low, high, rise } = strengthTrend(log, usual);
    near(today, 139.7, 0.05);
    near(low, 135, 0.05);
    near(high, 144.5, 0.05);
    near(rise, 0, 1e-9);
  });

  it("is surer of tested singles than of tens with calls", () => {
    const width = (reps: number, reserve: number, load: number) => {
      const log = [0, 3, 6, 9, 12, 15].map((day) => ({ date: 46_000 + day, load, reps, reserve }));
      const { low, high, today } = strengthTrend(log, usual);
      return (high - low) / today;
    };
    expect(width(1, 0, 140)).toBeLessThan(0.06);
    expect(width(10, 2, 100)).toBeGreaterThan(0.25);
  });

  it("takes no rise from reps that fall while the maximum stays", () => {
    // A lifter of 100 on a curve that gives a third more reps than Epley's, from tens down to threes.
    const log = Array.from({ length: 14 }, (_, i): LoggedSet => {
      const reps = 10 - Math.floor(i / 2);
      const load = 100 * epley.fraction(1 + (reps + 1) / 1.33);
      return { date: 46_000 + 3 * i, load, reps, reserve: 2 };
    });
    const { riseLow, riseHigh, chanceOfRise } = strengthTrend(log, usual);
    expect(riseLow).toBeLessThan(0);
    expect(riseHigh).toBeGreaterThan(0);
    expect(chanceOfRise).toBeLessThan(0.9);
  });

  it("sees a rise that is there, and its size", () => {
    const log = Array.from({ length: 20 }, (_, i): LoggedSet => {
      const oneRepMax = 100 * Math.exp((0.1 * i) / 19);
      return { date: 46_000 + 3 * i, load: oneRepMax * epley.fraction(7), reps: 5, reserve: 2 };
    });
    const { rise, riseLow, chanceOfRise } = strengthTrend(log, usual);
    expect(rise).toBeGreaterThan(0.07);
    expect(riseLow).toBeGreaterThan(0.03);
    expect(chanceOfRise).toBeGreaterThan(0.99);
  });

  it("is the same in pounds and in kilograms, in any order of the rows, at any time of day", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(2.2046226218, 0.45359237, 1000, 1e-3),
        fc.shuffledSubarray(trainingLog, { minLength: trainingLog.length }),
        fc.double({ min: 0, max: 0.99, noNaN: true }),
        (unit, shuffled, hour) => {
          const other = strengthTrend(
            shuffled.map((set) => ({ ...set, load: set.load * unit, date: set.date + hour })),
            usual,
          );
          near(other.today / unit, trend.today, 1e-6);
          near(other.low / unit, trend.low, 1e-6);
          near(other.riseHigh, trend.riseHigh);
          expect(other.table.map(({ date }) => date)).toEqual(trend.table.map(({ date }) => date));
        },
      ),
      { numRuns: 20 },
    );
  });

  it("has a narrower interval at less confidence, and where the curve is known", () => {
    const half = strengthTrend(trainingLog, { ...usual, confidence: 0.5 });
    expect(half.today).toBe(trend.today);
    expect(half.low).toBeGreaterThan(trend.low);
    expect(half.high).toBeLessThan(trend.high);
    expect(half.chanceOfRise).toBe(trend.chanceOfRise);
    const known = strengthTrend(trainingLog, { ...usual, curveSd: 0 });
    expect(known.high - known.low).toBeLessThan(trend.high - trend.low);
  });

  it("takes a biased lifter's reserve for what it is", () => {
    const steady = [0, 3, 7].map((date) => ({ date, load: 100, reps: 5, reserve: 1 }));
    const moreLeft = steady.map((set) => ({ ...set, reserve: 2.5 }));
    const biased = strengthTrend(steady, { ...usual, reserveBias: 1.5 });
    expect(biased).toEqual(strengthTrend(moreLeft, usual));
  });

  it("lets a tested single be a single, whatever the bias", () => {
    const singles = [0, 3, 7].map((date) => ({ date, load: 100, reps: 1, reserve: 0 }));
    const biased = strengthTrend(singles, { ...usual, reserveBias: 2 });
    expect(biased).toEqual(strengthTrend(singles, usual));
    near(biased.today, 100, 1e-9);
  });

  it("knows the usual spread of curves: a quarter for a published equation, a tenth for one's own", () => {
    expect(strengthTrend(trainingLog, { ...usual, curveSd: 0.25 })).toEqual(trend);
    const own = ownCurve(28);
    expect(strengthTrend(trainingLog, { equation: own, curveSd: 0.1 })).toEqual(
      strengthTrend(trainingLog, { equation: own }),
    );
  });

  it("has no answer under 3 days", () => {
    const log = [46_000, 46_003].map((date) => ({ date, load: 100, reps: 5, reserve: 2 }));
    expect(() => strengthTrend(log, usual)).toThrow("at least 3 days; found 2");
  });

  it("refuses a spread or a confidence that is none", () => {
    const trying = (options: Partial<TrendOptions>) => () =>
      strengthTrend(trainingLog, { ...usual, ...options });
    expect(trying({ reserveSd: 0 })).toThrow("the standard deviation of reserve is 0");
    expect(trying({ curveSd: -0.1 })).toThrow("the standard deviation of the curve is -0.1");
    expect(trying({ confidence: 1 })).toThrow("confidence is 1");
  });

  it("sees through five thousand sets at once", () => {
    const years = Array.from({ length: 5000 }, (_, i): LoggedSet => {
      const oneRepMax = 100 * Math.exp(0.05 * Math.sin(i / 700));
      const t = 3 + ((i * 7) % 9);
      return {
        date: i / 2,
        load: oneRepMax * epley.fraction(t),
        reps: t - (i % 3),
        reserve: i % 3,
      };
    });
    const started = performance.now();
    const { days, sets, today, low, high } = strengthTrend(years, usual);
    expect(performance.now() - started).toBeLessThan(15_000);
    expect([days, sets]).toEqual([2500, 5000]);
    const truth = 100 * Math.exp(0.05 * Math.sin(4999 / 700));
    expect(low < truth && truth < high && low < today && today < high).toBe(true);
  });
});
