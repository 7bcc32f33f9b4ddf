import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import { leaveOneOut } from "../../../src/core/studies/leaveOneOut";
import { onePerStudy } from "../../../src/core/studies/onePerStudy";
import type { PoolMethod } from "../../../src/core/studies/pooledMean";
import { poolStudies } from "../../../src/core/studies/poolStudies";
import { expectAllNear, expectNear, expectPrinted, ITERATED, ITERATED_VARIANCE } from "./matching";
import { bcg, sixStudies } from "./published";

const pool = (
  { effects, standardErrors }: { effects: number[]; standardErrors: number[] },
  options: Parameters<typeof poolStudies>[2],
) => poolStudies(effects, standardErrors, options);

describe("pooling the six studies of Borenstein et al. 2009, chapter 14", () => {
  it("gives the book's figures, printed to three digits", () => {
    const fixed = pool(sixStudies, { method: "fixed", interval: "z" });
    expectPrinted(fixed.estimate, "0.414");
    expectPrinted(fixed.standardError, "0.064");
    expectNear(fixed.q, 12.0, 2e-3);
    const random = pool(sixStudies, { method: "dl", interval: "z" });
    expectPrinted(random.betweenStudyVariance, "0.037");
    expectPrinted(random.estimate, "0.358");
    expectPrinted(random.standardError, "0.105");
    expectPrinted(random.shareBetweenStudies, "0.58");
  });

  it('as one true effect, is metafor\'s rma(method = "FE")', () => {
    const result = pool(sixStudies, { method: "fixed", interval: "z" });
    expectAllNear(result, {
      studies: 6,
      estimate: 0.414313492,
      standardError: 0.0639659192,
      low: 0.288942594,
      high: 0.53968439,
      statistic: 6.47709745,
      p: 9.35038075e-11,
      betweenStudySd: 0,
      betweenStudyVariance: 0,
      shareBetweenStudies: 0.583952077,
      q: 12.0178463,
      qP: 0.0345440612,
    });
    expect(result.predictLow).toHaveProperty("absent");
    expect(result.predictHigh).toHaveProperty("absent");
  });

  it('by moments, is metafor\'s rma(method = "DL")', () => {
    expectAllNear(pool(sixStudies, { method: "dl", interval: "z" }), {
      studies: 6,
      estimate: 0.358189743,
      standardError: 0.105281484,
      low: 0.151841825,
      high: 0.56453766,
      statistic: 3.40221023,
      p: 0.00066843197,
      betweenStudySd: 0.193306191,
      betweenStudyVariance: 0.0373672834,
      shareBetweenStudies: 0.583952077,
      q: 12.0178463,
      qP: 0.0345440612,
    });
  });

  it("by moments with Hartung and Knapp's interval unheld, is metafor's test = \"knha\"", () => {
    expectAllNear(pool(sixStudies, { method: "dl", interval: "t unheld" }), {
      standardError: 0.0902183682,
      low: 0.126276044,
      high: 0.590103441,
      statistic: 3.97025295,
      p: 0.0106334948,
    });
  });

  it("by moments with the t interval held, has the model's standard error and Student's t (own R)", () => {
    expectAllNear(pool(sixStudies, { method: "dl" }), {
      standardError: 0.105281484,
      low: 0.0875550726,
      high: 0.628824413,
      statistic: 3.40221023,
      p: 0.0192049181,
    });
  });
});

describe("pooling the BCG trials of Colditz et al. 1994", () => {
  it("by restricted likelihood gives the printed figures (RoBMA's vignette; course slides)", () => {
    const result = pool(bcg, { interval: "z" });
    expectPrinted(result.betweenStudyVariance, "0.3132");
    expectPrinted(result.estimate, "-0.7145");
    expectPrinted(result.standardError, "0.1798");
    expectPrinted(result.statistic, "-3.9744");
    expectPrinted(result.low, "-1.0669");
    expectPrinted(result.high, "-0.3622");
    expectPrinted(result.q, "152.233");
  });

  it("by restricted likelihood is metafor's rma at threshold 1e-12", () => {
    const result = pool(bcg, { interval: "z" });
    expectAllNear(
      result,
      {
        studies: 13,
        estimate: -0.714532454,
        standardError: 0.179781479,
        low: -1.06689768,
        high: -0.362167229,
        statistic: -3.97444974,
        betweenStudySd: 0.559681213,
        shareBetweenStudies: 0.921173441,
        q: 152.232954,
        predictLow: -2.0160175,
        predictHigh: 0.5708942,
      },
      ITERATED,
    );
    expectAllNear(
      result,
      { betweenStudyVariance: 0.31324306, p: 7.05421562e-5, qP: 1.99681497e-26 },
      ITERATED_VARIANCE,
    );
  });

  it("by default, with Hartung and Knapp's interval, is metafor's test = \"knha\"", () => {
    expectAllNear(
      pool(bcg, {}),
      {
        studies: 13,
        estimate: -0.714532454,
        standardError: 0.180791712,
        low: -1.10844376,
        high: -0.320621152,
        statistic: -3.95224121,
        p: 0.00192001053,
        // The prediction is the same whatever the interval.
        predictLow: -2.0160175,
        predictHigh: 0.5708942,
      },
      ITERATED,
    );
  });

  it("by moments gives what metafor's tests and Stata's metan print", () => {
    const result = pool(bcg, { method: "dl", interval: "z" });
    expectPrinted(result.estimate, "-0.7141");
    expectPrinted(result.low, "-1.0644");
    expectPrinted(result.high, "-0.3638");
    expectAllNear(result, {
      studies: 13,
      estimate: -0.714117324,
      standardError: 0.178742029,
      low: -1.06444526,
      high: -0.363789385,
      statistic: -3.99524012,
      p: 6.46287163e-5,
      betweenStudySd: 0.555661734,
      betweenStudyVariance: 0.308759963,
      shareBetweenStudies: 0.921173441,
      q: 152.232954,
      qP: 1.99681497e-26,
      // And whatever the method.
      predictLow: -2.0160175,
      predictHigh: 0.5708942,
    });
  });

  it("as one true effect gives what metafor's tests and Stata's metan print", () => {
    const result = pool(bcg, { method: "fixed", interval: "z" });
    expectPrinted(result.estimate, "-0.4303");
    expectPrinted(result.low, "-0.5097");
    expectPrinted(result.high, "-0.3509");
    expectPrinted(result.statistic, "-10.6247");
    expectPrinted(result.q, "152.2330");
    expectAllNear(result, {
      studies: 13,
      estimate: -0.430284869,
      standardError: 0.0404987283,
      low: -0.509660918,
      high: -0.35090882,
      statistic: -10.6246514,
      betweenStudySd: 0,
      betweenStudyVariance: 0,
      shareBetweenStudies: 0.921173441,
      q: 152.232954,
    });
    expectAllNear(result, { p: 2.28865713e-26, qP: 1.99681497e-26 }, 1e-4);
  });
});

const study = fc.record({
  effect: fc.double({ min: -5, max: 5, noNaN: true }),
  standardError: fc.double({ min: 0.05, max: 3, noNaN: true }),
});
const studies = (minLength: number) =>
  fc.array(study, { minLength, maxLength: 9 }).map((all) => ({
    effects: all.map(({ effect }) => effect),
    standardErrors: all.map(({ standardError }) => standardError),
  }));
const method = fc.constantFrom<PoolMethod>("reml", "dl", "fixed");
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);

/** The numbers of a result that are in the units of the effects. */
const inUnits = (result: ReturnType<typeof poolStudies>) =>
  (["estimate", "low", "high", "standardError", "predictLow", "predictHigh"] as const).map((key) =>
    typeof result[key] === "number" ? result[key] : 0,
  );

describe("pooling any studies", () => {
  it("as one true effect is the inverse-variance mean, summed directly", () => {
    fc.assert(
      fc.property(studies(1), ({ effects, standardErrors }) => {
        const weights = standardErrors.map((error) => 1 / error ** 2);
        const mean = sum(effects.map((effect, i) => effect * weights[i]!)) / sum(weights);
        const q = sum(effects.map((effect, i) => weights[i]! * (effect - mean) ** 2));
        const result = poolStudies(effects, standardErrors, { method: "fixed" });
        expect(result.estimate).toBeCloseTo(mean, 12);
        expectNear(result.standardError, 1 / Math.sqrt(sum(weights)), 1e-12);
        expect(Math.abs(result.q - q)).toBeLessThan(1e-9 * (1 + q));
      }),
    );
  });

  it("by moments has DerSimonian and Laird's variance, (Q − df) / (Σw − Σw²/Σw) or 0", () => {
    fc.assert(
      fc.property(studies(2), ({ effects, standardErrors }) => {
        const weights = standardErrors.map((error) => 1 / error ** 2);
        const mean = sum(effects.map((effect, i) => effect * weights[i]!)) / sum(weights);
        const q = sum(effects.map((effect, i) => weights[i]! * (effect - mean) ** 2));
        const c = sum(weights) - sum(weights.map((w) => w * w)) / sum(weights);
        const closed = Math.max(0, (q - (effects.length - 1)) / c);
        const { betweenStudyVariance } = poolStudies(effects, standardErrors, { method: "dl" });
        expect(Math.abs((betweenStudyVariance as number) - closed)).toBeLessThan(
          1e-8 * (1 + closed),
        );
      }),
    );
  });

  it("does not depend on their order", () => {
    fc.assert(
      fc.property(studies(2), method, ({ effects, standardErrors }, how) => {
        const there = inUnits(poolStudies(effects, standardErrors, { method: how }));
        const back = inUnits(
          poolStudies([...effects].reverse(), [...standardErrors].reverse(), { method: how }),
        );
        there.forEach((value, i) => {
          expect(Math.abs(value - back[i]!)).toBeLessThan(1e-7 * (1 + Math.abs(value)));
        });
      }),
    );
  });

  it("goes along when every effect is shifted, its spread unchanged", () => {
    fc.assert(
      fc.property(studies(3), method, ({ effects, standardErrors }, how) => {
        const options = { method: how };
        const here = poolStudies(effects, standardErrors, options);
        const there = poolStudies(
          effects.map((effect) => effect + 16),
          standardErrors,
          options,
        );
        expect(Math.abs(there.estimate - here.estimate - 16)).toBeLessThan(1e-8);
        expect(
          Math.abs((there.standardError as number) - (here.standardError as number)),
        ).toBeLessThan(1e-7);
        expect(
          Math.abs((there.betweenStudyVariance as number) - (here.betweenStudyVariance as number)),
        ).toBeLessThan(1e-8);
      }),
    );
  });

  it("goes with the unit, a million times larger or smaller", () => {
    fc.assert(
      fc.property(
        studies(2),
        method,
        fc.constantFrom(1e6, 1e-6),
        ({ effects, standardErrors }, how, unit) => {
          const here = poolStudies(effects, standardErrors, { method: how });
          const there = poolStudies(
            effects.map((effect) => effect * unit),
            standardErrors.map((error) => error * unit),
            { method: how },
          );
          const scaled = inUnits(there);
          inUnits(here).forEach((value, i) => {
            expect(Math.abs(value - scaled[i]! / unit)).toBeLessThan(1e-7 * (1 + Math.abs(value)));
          });
        },
      ),
    );
  });

  it("holds only numbers and reasons, never NaN, with standard errors from 1e-3 to 1e3", () => {
    const wild = fc.record({
      effect: fc.double({ min: -1e4, max: 1e4, noNaN: true }),
      power: fc.double({ min: -3, max: 3, noNaN: true }),
    });
    const interval = fc.constantFrom("t" as const, "t unheld" as const, "z" as const);
    fc.assert(
      fc.property(fc.array(wild, { minLength: 1 }), method, interval, (all, how, kind) => {
        const result = poolStudies(
          all.map(({ effect }) => effect),
          all.map(({ power }) => 10 ** power),
          { method: how, interval: kind },
        );
        for (const value of Object.values(result) as unknown[]) {
          if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
          else expect(value).toHaveProperty("absent");
        }
      }),
    );
  });
});

describe("six invented studies (own R code)", () => {
  const effects = [0.2, 0.35, 0.5, 0.1, 0.42, 0.6];
  const standardErrors = [0.15, 0.2, 0.18, 0.12, 0.22, 0.25];

  it("have a held interval and a prediction over every spread they may have", () => {
    expectAllNear(
      poolStudies(effects, standardErrors),
      {
        estimate: 0.306114742,
        standardError: 0.0840386881,
        low: 0.0900864,
        high: 0.5221431,
        p: 0.0148638,
      },
      ITERATED,
    );
    expectAllNear(poolStudies(effects, standardErrors), {
      predictLow: -0.157501329,
      predictHigh: 0.838419598,
    });
  });

  it("that agree by luck are held to their own errors", () => {
    const three = [
      [0.3, 0.32, 0.28],
      [0.1, 0.12, 0.15],
    ] as const;
    expectAllNear(poolStudies(...three), {
      standardError: 0.068376346,
      low: 0.00813799,
      predictLow: -0.209833226,
      predictHigh: 0.810851724,
    });
    expectAllNear(poolStudies(...three, { interval: "t unheld" }), {
      standardError: 0.010186323,
      low: 0.25850945,
    });
  });

  it("give the same prediction in any unit and order", () => {
    const { predictLow } = poolStudies(effects, standardErrors);
    const other = poolStudies(
      effects.map((effect) => effect * 1e6).reverse(),
      standardErrors.map((error) => error * 1e6).reverse(),
    );
    expectNear((other.predictLow as number) / 1e6, predictLow as number, 1e-9);
  });

  it("with several effects each count once (Borenstein et al. 2009, ch. 24)", () => {
    const once = onePerStudy(effects, standardErrors, ["a", "a", "b", "c", "c", "d"], 0.5);
    expect(once.effects).toEqual([0.275, 0.5, 0.26, 0.6]);
    [0.152069063, 0.18, 0.149331845, 0.25].forEach((error, i) => {
      expectNear(once.standardErrors[i], error);
    });
    expectAllNear(
      poolStudies(once.effects, once.standardErrors),
      { studies: 4, estimate: 0.360007464, standardError: 0.0860820784, high: 0.633959073 },
      ITERATED,
    );
  });

  it("are left one out in turn", () => {
    const rows = leaveOneOut(effects, standardErrors);
    expect(rows.map(({ leftOut }) => leftOut)).toEqual([0, 1, 2, 3, 4, 5]);
    for (const [study, estimate, low, high, p] of [
      [1, 0.3456796, 0.0568423, 0.6345168, 0.0293007],
      [4, 0.3748905, 0.1376566, 0.6121243, 0.0118056],
      [6, 0.2695978, 0.0390992, 0.5000965, 0.0314527],
    ] as const) {
      expectAllNear(rows[study - 1]!, { estimate, low, high, p }, ITERATED);
    }
  });
});

describe("one effect a study", () => {
  it("is the mean, its variance the sum of the whole covariance matrix over m²", () => {
    const errors = [0.1, 0.2, 0.4];
    for (const r of [0, 0.3, 1]) {
      const { standardErrors } = onePerStudy([1, 2, 6], errors, ["x", "x", "x"], r);
      const matrix = errors.flatMap((a, i) => errors.map((b, j) => (i === j ? 1 : r) * a * b));
      expectNear(standardErrors[0], Math.sqrt(sum(matrix)) / 3, 1e-12);
    }
    expect(onePerStudy([1, 2, 6], errors, ["x", "x", "x"], 1).effects).toEqual([3]);
  });

  it("leaves studies without a label alone, in order of first appearance", () => {
    const once = onePerStudy(
      [1, 2, 3, 4, 5],
      [1, 1, 1, 1, 1],
      [undefined, "b", undefined, "a", "b"],
    );
    expect(once.effects).toEqual([1, 3.5, 3, 4]);
    expect(once.standardErrors[0]).toBe(1);
  });

  it("refuses a correlation that is none", () => {
    for (const r of [-0.1, 1.1, NaN]) {
      expect(() => onePerStudy([1, 2], [1, 1], ["a", "a"], r)).toThrow(
        "expected a number from 0 to 1",
      );
    }
  });
});

describe("leaving one study out", () => {
  it("of two leaves the other as it is, with an interval only by its own error", () => {
    const [first, second] = leaveOneOut([0.2, 0.5], [0.1, 0.2]);
    expect([first!.estimate, second!.estimate]).toEqual([0.5, 0.2]);
    expect(first!.low).toHaveProperty("absent");
    expect(first!.p).toHaveProperty("absent");
    for (const options of [{ interval: "z" }, { method: "fixed" }] as const) {
      const [own] = leaveOneOut([0.2, 0.5], [0.1, 0.2], options);
      expectNear(own!.high, 0.5 + 0.2 * 1.959963985);
    }
  });

  it("needs two", () => {
    expect(() => leaveOneOut([0.2], [0.1])).toThrow(NoAnswer);
  });
});

describe("pooling few or strange studies", () => {
  it("holds only finite numbers at the edge of what it takes", () => {
    for (const method of ["reml", "dl", "fixed"] as const) {
      for (const [effects, standardErrors] of [
        [
          [1e50, -1e50, 3],
          [1e-50, 1e-50, 1e50],
        ],
        [
          [1e50, 1e50, -1e50],
          [1e50, 1e-50, 1e-50],
        ],
        [
          [1e-50, 2e-50, 5e-50],
          [1e-50, 1e-50, 1e-50],
        ],
      ] as const) {
        const result = poolStudies(effects, standardErrors, { method });
        for (const value of Object.values(result) as unknown[]) {
          if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
        }
      }
    }
  });

  it("of one study is that study; only its own normal interval exists", () => {
    const z = poolStudies([0.4], [0.1], { interval: "z" });
    expectAllNear(z, { studies: 1, estimate: 0.4, standardError: 0.1, statistic: 4, q: 0 });
    expectAllNear(z, { low: 0.4 - 0.195996398, high: 0.4 + 0.195996398 });
    const t = poolStudies([0.4], [0.1]);
    expect(t.estimate).toBe(0.4);
    for (const key of ["standardError", "low", "high", "statistic", "p"] as const) {
      expect(t[key], key).toHaveProperty("absent");
    }
    for (const result of [z, t]) {
      for (const key of [
        "betweenStudySd",
        "betweenStudyVariance",
        "shareBetweenStudies",
        "qP",
        "predictLow",
        "predictHigh",
      ] as const) {
        expect(result[key], key).toHaveProperty("absent");
      }
    }
    expect(poolStudies([0.4], [0.1], { method: "fixed" }).betweenStudyVariance).toBe(0);
  });

  it("of two studies foretells nothing, but has an interval on 1 df", () => {
    const result = poolStudies([1, 3], [1, 1]);
    // τ² = ((1 − 3)² − 2) / 2 = 1; SE = √(Σ w r² / 1 / Σ w) = 1; t(1) at 0.975 is 12.7062047.
    expectAllNear(result, {
      estimate: 2,
      betweenStudyVariance: 1,
      standardError: 1,
      low: 2 - 12.7062047,
      high: 2 + 12.7062047,
    });
    expect(result.predictLow).toHaveProperty("absent");
  });

  it("that agree exactly has no spread, so no t test unheld", () => {
    const errors = [0.1, 0.7, 1.3];
    const result = poolStudies([0.1, 0.1, 0.1], errors, { interval: "t unheld" });
    expect(result).toMatchObject({
      estimate: 0.1,
      standardError: 0,
      low: 0.1,
      high: 0.1,
      betweenStudyVariance: 0,
      shareBetweenStudies: 0,
      q: 0,
      qP: 1,
    });
    expect(result.statistic).toHaveProperty("absent");
    expect(result.p).toHaveProperty("absent");
    // One more study can still be foretold, from the studies' own errors.
    expect(result.predictLow).toBeLessThan(0.1);
    // Held, the interval is that of the studies' own errors, by Student's t.
    const held = poolStudies([0.1, 0.1, 0.1], errors);
    const z = poolStudies([0.1, 0.1, 0.1], errors, { interval: "z" });
    expect(held.standardError).toBe(z.standardError);
    expect(held.low).toBeLessThan(z.low as number);
  });

  it("held, is never surer than the model and never surer than unheld", () => {
    fc.assert(
      fc.property(studies(2), ({ effects, standardErrors }) => {
        const error = (interval: "t" | "t unheld" | "z") =>
          poolStudies(effects, standardErrors, { interval }).standardError as number;
        expect(error("t")).toBe(Math.max(error("z"), error("t unheld")));
      }),
    );
  });

  it("widens with the confidence asked for", () => {
    const wide = pool(bcg, { confidence: 0.99 });
    const narrow = pool(bcg, { confidence: 0.9 });
    expect(wide.low).toBeLessThan(narrow.low as number);
    expect(wide.predictHigh).toBeGreaterThan(narrow.predictHigh as number);
  });

  it("refuses what cannot be, by name and place", () => {
    expect(() => poolStudies([], [])).toThrow(NoAnswer);
    expect(() => poolStudies([1, 2], [0.1, 0])).toThrow(
      new BadInput("value 2 of standardErrors is 0; expected a number above 0"),
    );
    expect(() => poolStudies([1, 2], [-0.1, 0.1])).toThrow("value 1 of standardErrors is -0.1");
    expect(() => poolStudies([1, NaN], [0.1, 0.1])).toThrow("value 2 of effects is NaN");
    expect(() => poolStudies([1, 2], [0.1, Infinity])).toThrow("value 2 of standardErrors");
    expect(() => poolStudies([1, 2], [0.1])).toThrow(
      new BadInput("effects has 2 values and standardErrors has 1; expected as many in both"),
    );
    expect(() => poolStudies([1], [1], { confidence: 95 })).toThrow("confidence is 95");
  });
});
