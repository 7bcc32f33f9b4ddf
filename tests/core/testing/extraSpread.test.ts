import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { type ExtraSpread, extraSpread } from "../../../src/core/testing/extraSpread";
import { expectAllNear, expectNear } from "../studies/matching";
import { expectNoNonsense, reasonOf } from "./finite";

const numbersOf = (result: ExtraSpread) => result as Record<keyof ExtraSpread, number>;

describe("the spread beyond another", () => {
  test("has the values computed in R: five athletes against six, and twenty against test error", () => {
    const [seen, control] = [Math.sqrt(9.2), Math.sqrt(2 / 3)];
    expectAllNear(extraSpread({ sd: seen, df: 4 }, { sd: control, df: 5 }, 0.95), {
      sd: 2.921187,
      low: 1.3243539,
      high: 8.67766884,
      p: 0.00654547158,
    });
    const error = 2.5 * Math.SQRT2;
    expectAllNear(extraSpread({ sd: 6, df: 19 }, { sd: error }, 0.95), {
      sd: 4.84767986,
      low: 2.88451782,
      high: 8.0185848,
      p: 0.000025653074,
    });
    expectAllNear(extraSpread({ sd: 6, df: 19 }, { sd: error, df: 9 }, 0.95), {
      sd: 4.84767986,
      low: 0,
      high: 8.05145203,
      p: 0.0535625153,
    });
  });

  const sd = fc.double({ min: 0.1, max: 20, noNaN: true });
  const df = fc.integer({ min: 1, max: 60 });

  test("is the textbook's sum of two intervals, by jStat's chi-square and F", () => {
    const { chisquare, centralF } = jstat.jStat;
    fc.assert(
      fc.property(
        sd,
        sd,
        df,
        df,
        fc.constantFrom(0.8, 0.95),
        (one, other, dfOne, dfOther, level) => {
          const [a, b] = [one ** 2, other ** 2];
          const lowest = (variance: number, free: number) =>
            (free * variance) / chisquare.inv((1 + level) / 2, free);
          const highest = (variance: number, free: number) =>
            (free * variance) / chisquare.inv((1 - level) / 2, free);
          const lower = a - b - Math.hypot(a - lowest(a, dfOne), highest(b, dfOther) - b);
          const upper = a - b + Math.hypot(highest(a, dfOne) - a, b - lowest(b, dfOther));
          const result = numbersOf(
            extraSpread({ sd: one, df: dfOne }, { sd: other, df: dfOther }, level),
          );
          const scale = Math.max(a, b) * 1e-4;
          expect(Math.abs(result.low ** 2 - Math.max(0, lower))).toBeLessThan(scale);
          expect(Math.abs(result.high ** 2 / (Math.max(0, upper) || 1) - 1)).toSatisfy(
            (off: number) => off < 1e-3 || Math.max(0, upper) < scale,
          );
          expect(result.p).toBeCloseTo(1 - centralF.cdf(a / b, dfOne, dfOther), 6);
        },
      ),
    );
  });

  test("is surer where the other spread is known exactly, which many degrees of freedom come to", () => {
    const known = numbersOf(extraSpread({ sd: 6, df: 19 }, { sd: 4 }, 0.95));
    const estimated = numbersOf(extraSpread({ sd: 6, df: 19 }, { sd: 4, df: 9 }, 0.95));
    const nearly = numbersOf(extraSpread({ sd: 6, df: 19 }, { sd: 4, df: 1e5 }, 0.95));
    expect(known.low).toBeGreaterThan(estimated.low);
    expect(known.p).toBeLessThan(estimated.p);
    expectNear(nearly.high, known.high, 1e-3);
    expectNear(nearly.p, known.p, 1e-2);
  });

  test("goes with the unit", () => {
    const base = numbersOf(extraSpread({ sd: 6, df: 19 }, { sd: 4, df: 9 }, 0.95));
    for (const unit of [1e-200, 1e-9, 1e200]) {
      const result = numbersOf(
        extraSpread({ sd: 6 * unit, df: 19 }, { sd: 4 * unit, df: 9 }, 0.95),
      );
      expectNear(result.sd, base.sd * unit);
      expectNear(result.high, base.high * unit);
      expectNear(result.p, base.p);
    }
  });

  test("does not exist where there is none, but its interval does", () => {
    const result = extraSpread({ sd: 4, df: 19 }, { sd: 6, df: 9 }, 0.95);
    expect(reasonOf(result.sd)).toMatch(/no more/);
    expect(result.low).toBe(0);
    expect(result.p).toBeGreaterThan(0.5);
    const alike = extraSpread({ sd: 0.3 * Math.SQRT2, df: 9 }, { sd: Math.sqrt(0.18) }, 0.95);
    expect(reasonOf(alike.sd)).toMatch(/no more/);
  });

  test("of a group that did not vary at all has no interval", () => {
    const still = extraSpread({ sd: 3, df: 4 }, { sd: 0, df: 4 }, 0.95);
    expect(still.sd).toBe(3);
    expect(reasonOf(still.low)).toMatch(/spread of 0/);
    expect(reasonOf(extraSpread({ sd: 0, df: 4 }, { sd: 0, df: 4 }, 0.95).sd)).toMatch(/no more/);
  });

  test("is always numbers and reasons", () => {
    const free = fc.oneof(df, fc.constantFrom(0.5, 1e6));
    fc.assert(
      fc.property(sd, sd, free, fc.option(free, { nil: undefined }), (one, other, a, b) => {
        expectNoNonsense(() => extraSpread({ sd: one, df: a }, { sd: other, df: b }, 0.95));
      }),
    );
  });
});
