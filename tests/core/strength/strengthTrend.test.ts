import fc from "fast-check";
import { describe, expect, it } from "vitest";
import reference from "../../../shared/reference/core.json";
import log from "../../../shared/reference/data/training-log.json";
import { equations, ownCurve } from "../../../src/core/strength/equations";
import { strengthTrend, type LoggedSet } from "../../../src/core/strength/strengthTrend";

const { epley, brzycki } = equations;
const sets = log.date.map((date, i): LoggedSet => ({
  date,
  load: log.load[i]!,
  reps: log.reps[i]!,
  reserve: log.reserve[i]!,
}));
const trend = strengthTrend(sets, { equation: epley });

const near = (actual: number, expected: number, relative: number) =>
  expect(Math.abs(actual / expected - 1)).toBeLessThanOrEqual(relative);

describe("the strength trend", () => {
  it("is what the model gives in R for an invented log (own R code; Harvey 1989)", () => {
    near(trend.today, 106.033956, 1e-4);
    near(trend.low, 102.610015, 1e-4);
    near(trend.high, 109.572149, 1e-4);
    near(trend.rise, 0.0497960345, 1e-3);
    near(trend.chanceOfRise, 0.975885793, 1e-4);
    expect(trend.days).toBe(14);
    expect(trend.sets).toBe(18);
    const { walk, noise, match } = reference.strengthTrendVariances;
    near(trend.variances.walk, walk, match);
    near(trend.variances.noise, noise, match);
  });

  it("has a day a row, today the last, each with its interval (same source)", () => {
    expect(trend.table).toHaveLength(14);
    const expected: [number, number[]][] = [
      [0, [45901, 101.00434, 97.4904976, 104.644832]],
      [6, [45921, 101.735071, 98.7431134, 104.817686]],
      [13, [45952, 106.033956, 102.610015, 109.572149]],
    ];
    for (const [place, [date, oneRepMax, low, high]] of expected) {
      const day = trend.table[place]!;
      expect(day.date).toBe(date);
      near(day.oneRepMax, oneRepMax!, 1e-4);
      near(day.low, low!, 1e-4);
      near(day.high, high!, 1e-4);
    }
    expect(trend.table.at(-1)!.oneRepMax).toBe(trend.today);
  });

  it("is the same in pounds and in kilograms, in any order of the rows, at any time of day", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(2.2046226218, 0.45359237, 1000, 1e-3),
        fc.shuffledSubarray(sets, { minLength: sets.length }),
        fc.double({ min: 0, max: 0.99, noNaN: true }),
        (unit, shuffled, hour) => {
          const other = strengthTrend(
            shuffled.map((set) => ({ ...set, load: set.load * unit, date: set.date + hour })),
            { equation: epley },
          );
          near(other.today, trend.today * unit, 1e-5);
          near(other.low, trend.low * unit, 1e-5);
          near(other.rise, trend.rise, 1e-3);
          expect(other.table.map(({ date }) => date)).toEqual(trend.table.map(({ date }) => date));
        },
      ),
      { numRuns: 25 },
    );
  });

  it("has a narrower interval at less confidence, about the same estimate", () => {
    const half = strengthTrend(sets, { equation: epley, confidence: 0.5 });
    expect(half.today).toBe(trend.today);
    // z is 0.67449 at 50% and 1.95996 at 95%, on the logarithms.
    const reach = Math.log(trend.high / trend.today);
    near(Math.log(half.high / half.today), (reach * 0.67448975) / 1.95996398, 1e-6);
    near(Math.log(half.today / half.low), (reach * 0.67448975) / 1.95996398, 1e-6);
  });

  it("finds no rise and an even chance where the level does not wander", () => {
    const steady = [0, 3, 7, 10].map((date) => ({ date, load: 100, reps: 5, reserve: 1 }));
    const { today, rise, chanceOfRise, variances } = strengthTrend(steady, { equation: epley });
    expect([rise, chanceOfRise, variances.walk]).toEqual([0, 0.5, 0]);
    near(today, 100 * (1 + 6 / 30), 1e-12);
  });

  it("takes a biased lifter's reserve for what it is", () => {
    const steady = [0, 3, 7].map((date) => ({ date, load: 100, reps: 5, reserve: 1 }));
    const { today } = strengthTrend(steady, { equation: epley, reserveBias: 1.5 });
    near(today, 100 * (1 + 7.5 / 30), 1e-12);
  });

  it("weighs the sets of a day by how well they tell: a heavy single more than a light set", () => {
    // Steady days of two sets that disagree, so the level is their mean by precision, the variances 0.
    const day = (date: number): LoggedSet[] => [
      { date, load: 92, reps: 3, reserve: 0 },
      { date, load: 72, reps: 12, reserve: 0 },
    ];
    const { today, low, variances } = strengthTrend([1, 2, 3, 4].flatMap(day), {
      equation: epley,
      reserveSd: 2,
    });
    expect(variances).toEqual({ walk: 0, noise: 0 });
    // d ln f / dt of Epley's equation is −1 / (30 + t).
    const precision = [33, 42].map((slope) => (slope / 2) ** 2);
    const values = [92 * 1.1, 72 * 1.4].map(Math.log);
    const total = precision[0]! + precision[1]!;
    const mean = (precision[0]! * values[0]! + precision[1]! * values[1]!) / total;
    near(today, Math.exp(mean), 1e-12);
    near(low, Math.exp(mean - 1.959963985 / Math.sqrt(4 * total)), 1e-9);
  });

  it("leaves out sets past maxReps, as called, and counts those it used", () => {
    const light: LoggedSet[] = [{ date: 45960, load: 40, reps: 12, reserve: 1 }];
    expect(strengthTrend([...sets, ...light], { equation: epley })).toEqual(trend);
    const biased = strengthTrend(sets, { equation: epley, maxReps: 10, reserveBias: 1 });
    expect(biased.sets).toBe(sets.filter(({ reps, reserve }) => reps + reserve <= 10).length);
  });

  it("takes an athlete's own curve", () => {
    const curve = ownCurve(25);
    const steady = [0, 3, 7].map((date) => ({ date, load: 100, reps: 6, reserve: 0 }));
    near(strengthTrend(steady, { equation: curve }).today, 120, 1e-12);
  });

  it("has no answer under 3 days, and says what it left out", () => {
    const twoDays = [0, 0, 5].map((date) => ({ date, load: 100, reps: 5, reserve: 0 }));
    const days = (all: LoggedSet[]) => () => strengthTrend(all, { equation: epley });
    expect(days(twoDays)).toThrow("a trend takes sets of at least 3 days; found 2");
    const light = { date: 9, load: 40, reps: 20, reserve: 0 };
    expect(days([...twoDays, light])).toThrow(
      "found 2 (sets of more than 12 reps to failure, left out: 1)",
    );
    expect(days([])).toThrow("found 0");
  });

  it("names the row of a set that cannot be right", () => {
    const with3 = (change: Partial<LoggedSet>) => () =>
      strengthTrend(
        sets.map((set, i) => (i === 2 ? { ...set, ...change } : set)),
        { equation: brzycki, maxReps: 20 },
      );
    expect(with3({ load: -5 })).toThrow("row 3: load is -5; expected above 0");
    expect(with3({ reps: 0 })).toThrow("row 3: reps is 0; expected at least 1");
    expect(with3({ reserve: -1 })).toThrow("row 3: reserve is -1; expected at least 0");
    expect(with3({ reps: 16, row: 40 })).toThrow("row 40: reps plus reserve is 17;");
    expect(() => strengthTrend(sets, { equation: epley, reserveSd: 0 })).toThrow("reserve is 0");
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
    const { table, days } = strengthTrend(years, { equation: epley });
    expect(performance.now() - started).toBeLessThan(3000);
    expect(days).toBe(2500);
    for (const { date, oneRepMax, low, high } of table) {
      const truth = 100 * Math.exp(0.05 * Math.sin((2 * date) / 700));
      expect(low < truth && truth < high).toBe(true);
      near(oneRepMax, truth, 0.01);
    }
  });
});
