import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import { changeScore } from "../../../src/core/testing/changeScore";
import { squadChange } from "../../../src/core/testing/squadChange";
import { bruteForceEffects } from "../statistics/bruteForceEffects";
import { expectAllNear, expectNear } from "../studies/matching";

const pairs = (before: number[], after: number[]) =>
  before.map((score, i) => ({ before: score, after: after[i]! }));
const six = pairs([100, 110, 120, 90, 105, 130], [105, 112.5, 132.5, 90, 107.5, 145]);
const retest = { typicalError: 2.5, smallest: 2.5, confidence: 0.95 };

describe("six athletes tested at once, 'A' to 'F'", () => {
  const result = squadChange(six, retest);

  test("have the values computed in R", () => {
    const [a, b, c, d, e, f] = result;
    expectAllNear(a!, {
      change: 5,
      shrunkChange: 5.43992402,
      low: -0.569640682,
      high: 11.2476226,
      chanceAbove: 0.840767455,
      chanceBelow: 0.00543844851,
    });
    expectAllNear(c!, {
      shrunkChange: 10.3003799,
      low: 4.30711833,
      high: 16.9643103,
      chanceAbove: 0.995691431,
      chanceBelow: 7.78643e-6,
    });
    expectAllNear(d!, {
      shrunkChange: 2.19962009,
      low: -4.46431034,
      high: 8.19288167,
      chanceAbove: 0.477539644,
      chanceBelow: 0.0807759064,
    });
    for (const alike of [b!, e!]) {
      expectAllNear(alike, { shrunkChange: 3.81977205, low: -2.48503154, high: 9.58241962 });
    }
    expectAllNear(f!, { shrunkChange: 11.9205319, low: 5.35312149, high: 18.9907232 });
  });

  test("read as the whole squad has them: only the third and the sixth rose", () => {
    const real = "real increase";
    const within = "within test error";
    expect(result.map(({ reading }) => reading)).toEqual([
      within,
      within,
      real,
      within,
      within,
      real,
    ]);
  });

  test("are drawn closer together where the typical error is an estimate itself (R)", () => {
    const [a, , c, d] = squadChange(six, { ...retest, df: 9 });
    expectAllNear(a!, { shrunkChange: 5.52426488, low: -0.799513067, high: 11.7164932 });
    expectAllNear(c!, { shrunkChange: 9.87867561, low: 3.11332811, high: 16.9361793 });
    expectAllNear(d!, { shrunkChange: 2.62132439, low: -4.43617935, high: 9.38667189 });
  });

  test("are the model's sums by force, for both chances too", () => {
    const forced = bruteForceEffects(
      {
        values: [5, 2.5, 12.5, 0, 2.5, 15],
        errorVariances: [2, 2, 2, 2, 2, 2],
        sigma: 2.5,
        scale: 10,
      },
      { mostOmega: 100, omegaSteps: 3000 },
    );
    result.forEach(({ shrunkChange, low, high, chanceAbove, chanceBelow }, i) => {
      expectNear(shrunkChange, forced.effectMean(i), 1e-8);
      expect(forced.effectBelow(i, low)).toBeCloseTo(0.025, 8);
      expect(forced.effectBelow(i, high)).toBeCloseTo(0.975, 8);
      expect(chanceAbove).toBeCloseTo(1 - forced.effectBelow(i, 2.5), 8);
      expect(chanceBelow).toBeCloseTo(forced.effectBelow(i, -2.5), 8);
    });
  });
});

describe("one athlete alone", () => {
  test("is judged as CHANGESCORE does (R 4.2.2)", () => {
    const [one] = squadChange(pairs([120], [131]), { ...retest, typicalError: 3 });
    expectAllNear(one!, { change: 11, shrunkChange: 11, low: 2.68457705, high: 19.3154229 });
  });

  test("with the same interval, chance and reading, whatever the error's degrees of freedom", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 200, noNaN: true }),
        fc.double({ min: -12, max: 12, noNaN: true }),
        fc.constantFrom(undefined, 1, 2, 7, 40),
        fc.constantFrom(0, 1, 4),
        (before, gain, df, smallest) => {
          const score = { before, after: before + gain };
          const asked = { typicalError: 1.5, smallest, confidence: 0.9, df };
          const alone = changeScore({ ...score, ...asked });
          const [squad] = squadChange([score], asked);
          expect(squad!.low).toBeCloseTo(alone.low, 6);
          expect(squad!.high).toBeCloseTo(alone.high, 6);
          expect(squad!.chanceAbove).toBeCloseTo(alone.chance, 7);
          const nearEdge = [0, smallest, -smallest].some(
            (edge) => Math.min(Math.abs(alone.low - edge), Math.abs(alone.high - edge)) < 1e-5,
          );
          if (!nearEdge) expect(squad!.reading).toBe(alone.reading);
        },
      ),
      { numRuns: 15 },
    );
  });
});

describe("a squad", () => {
  test("whose changes differ by far more than test error keeps them nearly as they are", () => {
    const far = squadChange(pairs([100, 100, 100], [100, 300, 520]), { ...retest, scale: 1000 });
    for (const { change, shrunkChange } of far) {
      expect(Math.abs(change - shrunkChange)).toBeLessThan(0.2);
    }
  });

  test("of many who all gained about the same takes the mean gain for each", () => {
    const alike = squadChange(
      pairs(
        Array(30).fill(100) as number[],
        Array.from({ length: 30 }, (_, i) => 104 + (i % 3)),
      ),
      { ...retest, typicalError: 4 },
    );
    for (const { shrunkChange } of alike) expect(Math.abs(shrunkChange - 5)).toBeLessThan(0.2);
    expect(alike.every(({ reading }) => reading.startsWith("real increase"))).toBe(true);
  });

  test("that did not change and was merely unlucky with one is not said to have changed", () => {
    // Test error alone, evenly spread over twenty athletes, and a quarter more of it than usual.
    const errors = Array.from({ length: 20 }, (_, i) =>
      jstat.jStat.normal.inv((i + 0.5) / 20, 0, 1),
    );
    const scores = errors.map((z) => ({ before: 100, after: 100 + 2.5 * Math.SQRT2 * 1.25 * z }));
    const readings = (result: { reading: string }[]) =>
      result.filter(({ reading }) => reading !== "within test error").length;
    expect(readings(scores.map((score) => changeScore({ ...score, ...retest })))).toBe(2);
    expect(readings(squadChange(scores, retest))).toBe(0);
  });

  test("that is tested backwards fell by as much", () => {
    const turned = squadChange(
      six.map(({ before, after }) => ({ before: after, after: before })),
      retest,
    );
    squadChange(six, retest).forEach((forwards, i) => {
      expect(turned[i]!.shrunkChange).toBeCloseTo(-forwards.shrunkChange, 9);
      expect(turned[i]!.low).toBeCloseTo(-forwards.high, 8);
      expect(turned[i]!.chanceBelow).toBeCloseTo(forwards.chanceAbove, 9);
    });
  });

  test("is judged alike in any unit", () => {
    for (const unit of [1e-60, 1e-3, 2.2046, 1e60]) {
      const scaled = six.map(({ before, after }) => ({
        before: before * unit,
        after: after * unit,
      }));
      const result = squadChange(scaled, {
        ...retest,
        typicalError: 2.5 * unit,
        smallest: 2.5 * unit,
      });
      expectNear(result[2]!.chanceAbove, 0.995691431);
      expectNear(result[2]!.low, 4.30711833 * unit);
    }
  });

  test("needs a pair, and a test that can be", () => {
    expect(() => squadChange([], retest)).toThrow(NoAnswer);
    expect(() => squadChange(six, { ...retest, typicalError: 0 })).toThrow(BadInput);
    expect(() => squadChange(six, { ...retest, smallest: -1 })).toThrow(BadInput);
    expect(() => squadChange(six, { ...retest, scale: -1 })).toThrow(BadInput);
    expect(() => squadChange(six, { ...retest, confidence: 95 })).toThrow(BadInput);
    expect(() => squadChange(six, { ...retest, df: 0.5 })).toThrow(
      /df is 0.5; expected at least 1/,
    );
  });

  test("whose changes and typical error are in different units is refused, not computed for hours", () => {
    expect(() => squadChange(six, { ...retest, typicalError: 0.0025 })).toThrow(/in one unit/);
    expect(() => squadChange(six, { ...retest, typicalError: 1e-100, df: 20 })).toThrow(BadInput);
    for (const df of [undefined, 1, 20, 1e6]) {
      expect(squadChange(six, { ...retest, typicalError: 0.0151, df })).toHaveLength(6);
    }
  });
});
