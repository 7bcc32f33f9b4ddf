import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import { criticalValue } from "../../../src/core/statistics/distributions";
import { findRoot } from "../../../src/core/statistics/findRoot";
import { detectableDifference } from "../../../src/core/testing/detectableDifference";
import { ncpForPower, powerOfT } from "../../../src/core/testing/power";
import { sampleSize } from "../../../src/core/testing/sampleSize";
import { expectNear } from "../studies/matching";

const plan = {
  difference: 0.5,
  sd: 1,
  power: 0.8,
  alpha: 0.05,
  design: "two groups" as const,
  dropout: 0,
};

describe("athletes per group", () => {
  // R 4.2.2, power.t.test, rounded up; Cohen 1988, Table 2.4.1, is up to one lower, its n being approximate.
  test.each([
    [0.2, 394, 527, 586],
    [0.5, 64, 86, 96],
    [0.8, 26, 34, 39],
  ])("for a difference of %f SD", (difference, usual, powerful, strict) => {
    expect(sampleSize({ ...plan, difference })).toBe(usual);
    expect(sampleSize({ ...plan, difference, power: 0.9 })).toBe(powerful);
    expect(sampleSize({ ...plan, difference, alpha: 0.01 })).toBe(strict);
  });

  test("as in the help of R's power.t.test: 22.02 becomes 23", () => {
    expect(sampleSize({ ...plan, difference: 1, power: 0.9 })).toBe(23);
  });

  test("down a column of plans, where the search shares its work, as each by itself", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.6, noNaN: true }),
        fc.constantFrom(0.5, 0.8, 0.9),
        fc.constantFrom(0.05, 0.01),
        (difference, power, alpha) => {
          const n = sampleSize({ ...plan, difference, power, alpha });
          const powerWith = (size: number) =>
            powerOfT(difference * Math.sqrt(size / 2), 2 * (size - 1), alpha);
          expect(powerWith(n)).toBeGreaterThanOrEqual(power - 1e-9);
          if (n > 2) expect(powerWith(n - 1)).toBeLessThan(power + 1e-9);
        },
      ),
    );
  });

  test("the sign of the difference and the unit do not matter", () => {
    expect(sampleSize({ ...plan, difference: -1, power: 0.9 })).toBe(23);
    expect(sampleSize({ ...plan, difference: 12, sd: 12, power: 0.9 })).toBe(23);
  });

  test("correlation of before and after saves athletes, dropout costs them (Borm et al. 2007)", () => {
    expect(sampleSize({ ...plan, difference: 1, correlation: 0.7 })).toBe(10);
    expect(sampleSize({ ...plan, difference: 1, correlation: 0.95 })).toBe(4);
    expect(sampleSize({ ...plan, correlation: 0.7 })).toBe(34);
    expect(sampleSize({ ...plan, correlation: -0.7 })).toBe(34);
    expect(sampleSize({ ...plan, correlation: 0 })).toBe(64);
    expect(sampleSize({ ...plan, correlation: 0.7, dropout: 0.2 })).toBe(43);
  });

  test("21 / 0.7 is 30 athletes, whatever binary arithmetic says", () => {
    expect(21 / (1 - 0.3)).toBeGreaterThan(30);
    expect(sampleSize({ ...plan, difference: 0.9, dropout: 0.3 })).toBe(30);
  });
});

test("pairs (R 4.2.2, power.t.test, paired)", () => {
  expect(sampleSize({ ...plan, design: "paired" })).toBe(34);
  expect(sampleSize({ ...plan, difference: 1, design: "paired" })).toBe(10);
});

test("the answer is the fewest that reach the power", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.1, max: 4, noNaN: true }),
      fc.double({ min: 0.3, max: 0.99, noNaN: true }),
      fc.constantFrom(0.001, 0.01, 0.05, 0.2),
      fc.constantFrom("two groups" as const, "paired" as const),
      (difference, power, alpha, design) => {
        const samples = design === "paired" ? 1 : 2;
        const n = sampleSize({ ...plan, difference, power, alpha, design });
        const powerAt = (size: number) =>
          powerOfT(difference * Math.sqrt(size / samples), samples * (size - 1), alpha);
        expect(powerAt(n)).toBeGreaterThanOrEqual(power * (1 - 1e-9));
        if (n > 2) expect(powerAt(n - 1)).toBeLessThan(power);
      },
    ),
    { numRuns: 60 },
  );
});

describe("two groups compared from the same starting score", () => {
  /** The noncentrality by its definition: the gap before is expected to cost 1 / (2n − 4) of the precision. */
  const powerAt = (n: number, difference: number, r: number, alpha: number) => {
    const ncp = (difference / Math.sqrt(1 - r ** 2)) * Math.sqrt(n / 2 / (1 + 1 / (2 * n - 4)));
    return powerOfT(ncp, 2 * n - 3, alpha);
  };

  test("have the power computed in R", () => {
    expectNear(powerAt(10, 1, 0.7, 0.05), 0.8165808);
    expectNear(powerAt(3, 1, 0.95, 0.05), 0.582294);
  });

  test("are the fewest that reach the power, and never under 3", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 4, noNaN: true }),
        fc.double({ min: 0.3, max: 0.99, noNaN: true }),
        fc.constantFrom(0.001, 0.05, 0.2),
        fc.double({ min: 0.05, max: 0.97, noNaN: true }),
        (difference, power, alpha, correlation) => {
          const n = sampleSize({ ...plan, difference, power, alpha, correlation });
          expect(n).toBeGreaterThanOrEqual(3);
          expect(powerAt(n, difference, correlation, alpha)).toBeGreaterThanOrEqual(
            power * (1 - 1e-9),
          );
          if (n > 3) expect(powerAt(n - 1, difference, correlation, alpha)).toBeLessThan(power);
        },
      ),
      { numRuns: 60 },
    );
  });

  test("without a correlation are the plain t test, a blank being 0", () => {
    expect(sampleSize({ ...plan, correlation: 0 })).toBe(sampleSize(plan));
    expect(sampleSize({ ...plan, design: "paired", correlation: 0 })).toBe(34);
  });
});

test("a power no higher than alpha needs no more than can be tested", () => {
  expect(sampleSize({ ...plan, power: 0.04 })).toBe(2);
});

test("even an enormous difference needs two, a tiny one has no sensible answer", () => {
  for (const difference of [50, 1e6, 1e200]) expect(sampleSize({ ...plan, difference })).toBe(2);
  expect(() => sampleSize({ ...plan, difference: 1e-6 })).toThrow(NoAnswer);
  expect(() => sampleSize({ ...plan, difference: 1e-200 })).toThrow(NoAnswer);
});

test("a plan that cannot be is refused", () => {
  const refused = [
    { difference: 0 },
    { sd: 0 },
    { power: 80 },
    { alpha: 0 },
    { dropout: 1 },
    { dropout: -0.1 },
    { correlation: 1 },
    { correlation: 0.5, design: "paired" as const },
  ];
  for (const part of refused) expect(() => sampleSize({ ...plan, ...part })).toThrow(BadInput);
});

describe("the power of a t test", () => {
  test("has the values of R 4.2.2 (power.t.test, strict)", () => {
    expectNear(powerOfT(0.5 * Math.sqrt(32), 126, 0.05), 0.801459558, 1e-5);
    expectNear(powerOfT(0.6 * Math.sqrt(20), 19, 0.05), 0.7210051, 1e-5);
  });

  test("agrees with jStat's noncentral t", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6, noNaN: true }),
        fc.integer({ min: 2, max: 120 }),
        (ncp, df) => {
          const limit = criticalValue(0.95, df);
          const { noncentralt } = jstat.jStat;
          const expected = 1 - noncentralt.cdf(limit, df, ncp) + noncentralt.cdf(-limit, df, ncp);
          expect(powerOfT(ncp, df, 0.05)).toBeCloseTo(expected, 7);
        },
      ),
    );
  });

  test("without any difference is alpha", () => {
    for (const alpha of [1e-6, 0.05, 0.5]) expectNear(powerOfT(0, 9, alpha), alpha, 1e-8);
  });
});

test("the standard errors that a power takes are those of a slow and certain search, to 12 digits", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 3000 }),
      fc.double({ min: 0.25, max: 0.99, noNaN: true }),
      fc.constantFrom(1e-6, 0.001, 0.05, 0.2),
      (df, power, alpha) => {
        // On 1 degree of freedom a power of 99% at an alpha of one in a million takes 1.6 million of them.
        const certain = findRoot((ncp) => powerOfT(ncp, df, alpha) - power, 0, 1e7);
        expect(ncpForPower(power, alpha, df) / certain).toBeCloseTo(1, 12);
      },
    ),
    {
      numRuns: 40,
      examples: [
        [1, 0.25, 1e-6],
        [1, 0.99, 1e-6],
      ],
    },
  );
});

describe("the smallest difference that two groups can find", () => {
  test("has the values of R 4.2.2 (power.t.test, strict; pt for unequal groups)", () => {
    expectNear(detectableDifference(64, 64, 0.8, 0.05), 0.499069178, 1e-5);
    expectNear(detectableDifference(20, 20, 0.8, 0.05), 0.909129033, 1e-5);
    expectNear(detectableDifference(20, 20, 0.9, 0.05), 1.05199295, 1e-5);
    expectNear(detectableDifference(15, 25, 0.8, 0.05), 0.938944428, 1e-5);
    expectNear(detectableDifference(8, 8, 0.8, 0.01), 1.9432407, 1e-5);
  });

  test("is found with exactly that power", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 200 }),
        fc.integer({ min: 2, max: 200 }),
        fc.double({ min: 0.25, max: 0.999, noNaN: true }),
        fc.constantFrom(0.001, 0.05, 0.2),
        (nA, nB, power, alpha) => {
          const d = detectableDifference(nA, nB, power, alpha);
          const ncp = d / Math.sqrt(1 / nA + 1 / nB);
          expect(powerOfT(ncp, nA + nB - 2, alpha)).toBeCloseTo(power, 9);
        },
      ),
      { numRuns: 60 },
    );
  });

  test("takes whole groups of two or more, and a power above alpha", () => {
    expect(() => detectableDifference(1, 20, 0.8, 0.05)).toThrow(BadInput);
    expect(() => detectableDifference(20.5, 20, 0.8, 0.05)).toThrow(BadInput);
    expect(() => detectableDifference(20, 20, 0.05, 0.05)).toThrow(/above alpha/);
  });
});
