import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import { standardDeviation } from "../../../src/core/statistics/moments";
import { reliability } from "../../../src/core/testing/reliability";
import { expectAllNear, expectNear, expectPrinted } from "../studies/matching";
import { expectNoNonsense, reasonOf } from "./finite";
import { mini, ratings, weir, wright } from "./published";

describe("Weir 2005, J Strength Cond Res 19:231-240, data set A", () => {
  const result = reliability(weir, 0.95);

  test("has the printed typical error and correlations", () => {
    expectPrinted(result.typicalError, "7.6");
    expectPrinted(result.iccConsistency, "0.95");
    expectPrinted(result.iccAgreement, "0.95");
  });

  test("has the values of R 4.2.2 (anova, psych::ICC, qchisq, qf, t.test)", () => {
    expectAllNear(result, {
      n: 8,
      trials: 2,
      shift: -2.75,
      shiftLow: -11.6846462,
      shiftHigh: 6.1846462,
      detectableChange: 25.2709957,
      df: 7,
      typicalError: 7.55692681,
      errorLow: 4.99644465,
      errorHigh: 15.3804022,
      errorPercent: 0.0488726067,
      iccConsistency: 0.947016137,
      iccConsistencyLow: 0.760678494,
      iccConsistencyHigh: 0.989162807,
      iccAgreement: 0.949975071,
      iccAgreementLow: 0.786958514,
      iccAgreementHigh: 0.989636891,
    });
  });
});

describe("Shrout and Fleiss 1979, Psychol Bull 86:420-428, six targets and four judges", () => {
  const result = reliability(ratings, 0.95);

  test("has the printed correlations", () => {
    expectPrinted(result.iccAgreement, "0.29");
    expectPrinted(result.iccConsistency, "0.71");
  });

  test("has the values of R 4.2.2 (psych::ICC, qchisq)", () => {
    expectAllNear(result, {
      n: 6,
      trials: 4,
      shift: -1,
      detectableChange: 3.04348971,
      df: 15,
      typicalError: 1.00967542,
      errorLow: 0.745852134,
      errorHigh: 1.56266578,
      errorPercent: 0.190804803,
      iccConsistency: 0.714840715,
      iccConsistencyLow: 0.342464765,
      iccConsistencyHigh: 0.94585826,
      iccAgreement: 0.28976378,
      iccAgreementLow: 0.0187865134,
      iccAgreementHigh: 0.76108437,
    });
  });
});

test("Bland and Altman 1986, Lancet i:307-310, peak flow, Wright meter (R 4.2.2)", () => {
  expectAllNear(reliability(wright, 0.95), {
    n: 17,
    trials: 2,
    shift: -4.94117647,
    shiftLow: -16.1106461,
    shiftHigh: 6.22829317,
    detectableChange: 46.052903,
    df: 16,
    typicalError: 15.3612145,
    errorLow: 11.4405692,
    errorHigh: 23.3786771,
    errorPercent: 0.034297432,
    iccConsistency: 0.983045842,
    iccConsistencyLow: 0.953872223,
    iccConsistencyHigh: 0.993826833,
    iccAgreement: 0.983164008,
    iccAgreementLow: 0.955216723,
    iccAgreementHigh: 0.993818973,
  });
});

test("Bland and Altman 1986, Lancet i:307-310, peak flow, mini meter (R 4.2.2)", () => {
  expectAllNear(reliability(mini, 0.95), {
    n: 17,
    trials: 2,
    shift: 2.88235294,
    shiftLow: -11.9624191,
    shiftHigh: 17.727125,
    detectableChange: 61.2065633,
    df: 16,
    typicalError: 20.4158063,
    errorLow: 15.2050767,
    errorHigh: 31.0714066,
    errorPercent: 0.0449774778,
    iccConsistency: 0.966904805,
    iccConsistencyLow: 0.911200456,
    iccConsistencyHigh: 0.987887036,
    iccAgreement: 0.968470765,
    iccAgreementLow: 0.915783644,
    iccAgreementHigh: 0.98844106,
  });
});

const score = fc.integer({ min: 1, max: 60 }).map((tenths) => 100 + tenths / 10);
const table = (trials: number) =>
  fc.array(fc.array(score, { minLength: trials, maxLength: trials }), {
    minLength: 3,
    maxLength: 12,
  });

test("with two trials the typical error is the SD of the differences over √2", () => {
  fc.assert(
    fc.property(table(2), (rows) => {
      const { typicalError } = reliability(rows, 0.95);
      const sd = standardDeviation(rows.map(([first, second]) => second! - first!));
      expect(typicalError).toBeCloseTo(sd / Math.SQRT2, 10);
    }),
  );
});

test("a shift of everyone costs agreement and leaves error and consistency alone", () => {
  fc.assert(
    fc.property(table(3), (rows) => {
      const plain = reliability(rows, 0.9);
      fc.pre(plain.typicalError > 0 && typeof plain.iccConsistency === "number");
      const shifted = reliability(
        rows.map((row) => row.map((value, trial) => value + 50 * trial)),
        0.9,
      );
      expect(shifted.typicalError).toBeCloseTo(plain.typicalError, 9);
      expect(shifted.iccConsistency).toBeCloseTo(plain.iccConsistency, 9);
      expect(Math.abs(shifted.iccAgreement as number)).toBeLessThan(0.1);
    }),
  );
});

test("an interval holds its estimate, and a wider confidence holds the narrower interval", () => {
  fc.assert(
    fc.property(table(3), (rows) => {
      const [narrow, wide] = [reliability(rows, 0.8), reliability(rows, 0.99)];
      for (const part of ["error", "iccConsistency", "iccAgreement"] as const) {
        const estimate = narrow[part === "error" ? "typicalError" : part];
        const low = narrow[`${part}Low`];
        if (typeof low !== "number" || typeof estimate !== "number") continue;
        const high = narrow[`${part}High`] as number;
        expect(low).toBeLessThanOrEqual(estimate);
        expect(high).toBeGreaterThanOrEqual(estimate);
        expect(wide[`${part}Low`]).toBeLessThanOrEqual(low);
        expect(wide[`${part}High`]).toBeGreaterThanOrEqual(high);
      }
    }),
  );
});

test("trials that agree to the last decimal have no error, and no interval around it", () => {
  const result = reliability(
    [10.3, 15.1, 7.7].map((value) => [value, value - 5]),
    0.95,
  );
  expect(result.typicalError).toBe(0);
  expect(result.detectableChange).toBe(0);
  expect(result.iccConsistency).toBe(1);
  expectNear(result.shift, -5);
  expect(reasonOf(result.errorLow)).toMatch(/agree exactly/);
  expect(reasonOf(result.shiftLow)).toMatch(/do not vary/);
  expect(reasonOf(result.iccConsistencyLow)).toMatch(/agree exactly/);
});

test("athletes who do not differ have no correlation", () => {
  const result = reliability(
    [
      [5, 5],
      [5, 5],
    ],
    0.95,
  );
  expect(reasonOf(result.iccConsistency)).toMatch(/do not differ/);
  expect(reasonOf(result.iccAgreement)).toMatch(/do not differ/);
});

test("scores around 0 have no percent error", () => {
  const result = reliability(
    [
      [-1, 1],
      [2, -2],
      [0, 0],
    ],
    0.95,
  );
  expect(reasonOf(result.errorPercent)).toMatch(/above 0/);
});

test("one athlete is too few, one trial is no retest", () => {
  expect(() => reliability([[1, 2]], 0.95)).toThrow(NoAnswer);
  expect(() => reliability([], 0.95)).toThrow(NoAnswer);
  expect(() => reliability([[1], [2]], 0.95)).toThrow(BadInput);
  expect(() => reliability(weir, 95)).toThrow(BadInput);
});

test("no table of scores gives anything but numbers and reasons", () => {
  const coarse = fc.integer({ min: -2, max: 2 });
  const rows = fc
    .integer({ min: 2, max: 4 })
    .chain((k) =>
      fc.array(fc.array(coarse, { minLength: k, maxLength: k }), { minLength: 1, maxLength: 5 }),
    );
  fc.assert(
    fc.property(rows, fc.constantFrom(0.5, 0.95, 0.9999), (scores, confidence) => {
      expectNoNonsense(() => reliability(scores, confidence));
      const tenths = scores.map((row) => row.map((value) => value / 10));
      expectNoNonsense(() => reliability(tenths, confidence));
    }),
    { numRuns: 400 },
  );
});
