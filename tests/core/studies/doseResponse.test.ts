import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import { doseResponse, effectsAtDoses } from "../../../src/core/studies/doseResponse";
import { expectAllNear, expectNear, expectPrinted, ITERATED, ITERATED_VARIANCE } from "./matching";
import { bcg } from "./published";

describe("the BCG trials over latitude (Colditz et al. 1994)", () => {
  it("are what metafor prints for rma(yi, vi, mods = ~ ablat)", () => {
    const result = doseResponse(bcg.doses, bcg.effects, bcg.standardErrors, { interval: "z" });
    expectPrinted(result.intercept, "0.2515");
    expectPrinted(result.slope, "-0.0291");
    expectPrinted(result.slopeStandardError, "0.0072");
    expectPrinted(result.low, "-0.0432");
    expectPrinted(result.high, "-0.0150");
    // It prints -4.0444 and 0.0764, its default search stopping a little early.
    expectPrinted(result.statistic, "-4.04");
    expectNear(result.betweenStudySd ** 2, 0.07635, ITERATED_VARIANCE);
  });

  it("are metafor's at threshold 1e-12, with the normal interval", () => {
    const result = doseResponse(bcg.doses, bcg.effects, bcg.standardErrors, { interval: "z" });
    expectAllNear(
      result,
      {
        studies: 13,
        intercept: 0.251468156,
        slope: -0.0291017266,
        slopeStandardError: 0.00719531785,
        low: -0.0432042904,
        high: -0.0149991627,
        statistic: -4.04453662,
        betweenStudySd: 0.276310781,
      },
      ITERATED,
    );
    expectNear(result.p, 5.24267128e-5, ITERATED);
  });

  it('are metafor\'s test = "knha" by default', () => {
    expectAllNear(
      doseResponse(bcg.doses, bcg.effects, bcg.standardErrors),
      {
        studies: 13,
        intercept: 0.251468156,
        slope: -0.0291017266,
        slopeStandardError: 0.00820140941,
        low: -0.047152907,
        high: -0.0110505462,
        statistic: -3.54838115,
        p: 0.00456502226,
        betweenStudySd: 0.276310781,
      },
      ITERATED,
    );
  });

  it("foretell the mean effect at a latitude as metafor's predict does", () => {
    const table = effectsAtDoses(bcg.doses, bcg.effects, bcg.standardErrors, [0, 33, 55]);
    const expected = [
      { dose: 0, estimate: 0.251468156, low: -0.373446505, high: 0.876382817 },
      { dose: 33, estimate: -0.708888821, low: -0.977881992, high: -0.439895649 },
      { dose: 55, estimate: -1.34912681, low: -1.85362911, high: -0.844624501 },
    ];
    expect(table).toHaveLength(3);
    expected.forEach((row, i) => {
      expectAllNear(table[i]!, row, ITERATED);
    });
  });
});

const study = fc.record({
  dose: fc.integer({ min: 1, max: 40 }),
  effect: fc.double({ min: -5, max: 5, noNaN: true }),
  standardError: fc.double({ min: 0.05, max: 3, noNaN: true }),
});
const studies = fc
  .array(study, { minLength: 3, maxLength: 9 })
  .filter((all) => new Set(all.map(({ dose }) => dose)).size > 1)
  .map((all) => ({
    doses: all.map(({ dose }) => dose),
    effects: all.map(({ effect }) => effect),
    standardErrors: all.map(({ standardError }) => standardError),
  }));

describe("a line over any studies", () => {
  it("is ordinary least squares where all are equally precise, its t interval too", () => {
    fc.assert(
      fc.property(studies, fc.constantFrom(0.01, 0.5, 10), ({ doses, effects }, error) => {
        const k = doses.length;
        const middle = (values: number[]) => values.reduce((a, b) => a + b, 0) / k;
        const [x, y] = [middle(doses), middle(effects)];
        const sxx = doses.reduce((sum, dose) => sum + (dose - x) ** 2, 0);
        const slope = doses.reduce((sum, dose, i) => sum + (dose - x) * (effects[i]! - y), 0) / sxx;
        const squares = effects.reduce(
          (sum, effect, i) => sum + (effect - y - slope * (doses[i]! - x)) ** 2,
          0,
        );
        const result = doseResponse(
          doses,
          effects,
          doses.map(() => error),
          { interval: "t unheld" },
        );
        expect(Math.abs(result.slope - slope)).toBeLessThan(1e-9);
        expect(Math.abs(result.intercept - (y - slope * x))).toBeLessThan(1e-8);
        const standardError = Math.sqrt(squares / (k - 2) / sxx);
        expect(Math.abs(result.slopeStandardError - standardError)).toBeLessThan(1e-7);
        const between = Math.max(0, squares / (k - 2) - error ** 2);
        expect(Math.abs(result.betweenStudySd ** 2 - between)).toBeLessThan(1e-9);
      }),
    );
  });

  it("does not depend on their order, and turns with the sign of the dose", () => {
    fc.assert(
      fc.property(studies, ({ doses, effects, standardErrors }) => {
        const there = doseResponse(doses, effects, standardErrors);
        const back = doseResponse(
          [...doses].reverse().map((dose) => -dose),
          [...effects].reverse(),
          [...standardErrors].reverse(),
        );
        expect(Math.abs(there.slope + back.slope)).toBeLessThan(1e-7);
        expect(Math.abs(there.low + back.high)).toBeLessThan(1e-6 * (1 + Math.abs(there.low)));
        expect(Math.abs(there.intercept - back.intercept)).toBeLessThan(1e-6);
      }),
    );
  });

  it("goes with the units of dose and effect", () => {
    fc.assert(
      fc.property(
        studies,
        fc.constantFrom(1e6, 1e-6),
        fc.constantFrom(1e6, 1e-6),
        ({ doses, effects, standardErrors }, ofDose, ofEffect) => {
          const here = doseResponse(doses, effects, standardErrors);
          const there = doseResponse(
            doses.map((dose) => dose * ofDose),
            effects.map((effect) => effect * ofEffect),
            standardErrors.map((error) => error * ofEffect),
          );
          const ratio = ofEffect / ofDose;
          for (const key of ["slope", "slopeStandardError", "low", "high"] as const) {
            const off = Math.abs(there[key] / ratio - here[key]);
            expect(off, key).toBeLessThan(1e-7 * (1 + Math.abs(here[key])));
          }
        },
      ),
    );
  });

  it("has at dose 0 its intercept, and is surest in the middle of the doses", () => {
    const [zero, middle, far] = effectsAtDoses(
      bcg.doses,
      bcg.effects,
      bcg.standardErrors,
      [0, 33, 90],
    );
    const { intercept } = doseResponse(bcg.doses, bcg.effects, bcg.standardErrors);
    expect(zero!.estimate).toBe(intercept);
    expect(middle!.high - middle!.low).toBeLessThan(zero!.high - zero!.low);
    expect(middle!.high - middle!.low).toBeLessThan(far!.high - far!.low);
  });

  it("through which the effects go exactly has no scatter to test against", () => {
    const exact = [
      [1, 2, 3],
      [0.1, 0.2, 0.3],
      [0.05, 0.1, 0.2],
    ] as const;
    const result = doseResponse(...exact, { interval: "t unheld" });
    expect(result.slope).toBeCloseTo(0.1, 14);
    expect(result.slopeStandardError).toBe(0);
    expect(result.betweenStudySd).toBe(0);
    expect(result.statistic).toHaveProperty("absent");
    expect(result.p).toHaveProperty("absent");
    // Held, the studies' own errors stand, by Student's t.
    const z = doseResponse(...exact, { interval: "z" });
    expect(doseResponse(...exact).slopeStandardError).toBe(z.slopeStandardError);
  });

  it("holds the slope's standard error to the studies' own (own R code)", () => {
    const six = [
      [5, 8, 10, 12, 16, 20],
      [0.1, 0.3, 0.25, 0.45, 0.38, 0.62],
      [0.12, 0.15, 0.1, 0.18, 0.14, 0.2],
    ] as const;
    expectAllNear(
      doseResponse(...six),
      {
        slope: 0.0294090193,
        slopeStandardError: 0.0126278002,
        low: -0.0056513747,
        high: 0.0644694132,
        p: 0.0803479,
      },
      ITERATED,
    );
    const unheld = doseResponse(...six, { interval: "t unheld" });
    expectNear(unheld.slopeStandardError, 0.0068299488, ITERATED);
    const [below, inside] = effectsAtDoses(...six, [4, 10]);
    expectAllNear(below!, { estimate: 0.1000950257, low: -0.1774579, high: 0.377648 }, ITERATED);
    expectAllNear(
      inside!,
      { estimate: 0.2765491413, low: 0.1202608937, high: 0.4328373888 },
      ITERATED,
    );
  });

  it("says whether a dose lies inside the studied ones, the ends among them", () => {
    const at = [0.1, 0.3, 0.1 + 0.2, 0.05, 0.31];
    const rows = effectsAtDoses([0.1, 0.2, 0.3], [1, 2, 4], [1, 1, 1], at);
    expect(rows.map(({ inside }) => inside)).toEqual([true, true, true, false, false]);
  });

  it("needs three studies and two different doses", () => {
    expect(() => doseResponse([1, 2], [1, 2], [1, 1])).toThrow(NoAnswer);
    expect(() => doseResponse([5, 5, 5], [1, 2, 3], [1, 1, 1])).toThrow(NoAnswer);
    expect(() => doseResponse([0, 1e-200, 0], [1, 2, 3], [1, 1, 1])).toThrow(NoAnswer);
    const dusty = [0.3, 0.1 + 0.2, 0.3];
    expect(() => doseResponse(dusty, [1, 2, 3], [1, 1, 1])).toThrow(NoAnswer);
    expect(doseResponse([5, 5, 6], [1, 2, 3], [1, 1, 1]).slope).toBeCloseTo(1.5, 12);
  });

  it("refuses what cannot be, by name and place", () => {
    expect(() => doseResponse([1, 2, 3], [1, 2, 3], [1, -1, 1])).toThrow(
      new BadInput("value 2 of standardErrors is -1; expected a number above 0"),
    );
    expect(() => doseResponse([1, 2], [1, 2, 3], [1, 1, 1])).toThrow("doses has 2 values");
    expect(() => doseResponse([1, NaN, 3], [1, 2, 3], [1, 1, 1])).toThrow("value 2 of doses");
    expect(() => effectsAtDoses([1, 2, 3], [1, 2, 3], [1, 1, 1], [Infinity])).toThrow(
      "value 1 of at",
    );
  });
});
