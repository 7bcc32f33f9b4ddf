import chiSquareQuantileOfStdlib from "@stdlib/stats-base-dists-chisquare-quantile";
import fQuantileOfStdlib from "@stdlib/stats-base-dists-f-quantile";
import studentCdfOfStdlib from "@stdlib/stats-base-dists-t-cdf";
import studentQuantileOfStdlib from "@stdlib/stats-base-dists-t-quantile";
import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import {
  chiSquareCdf,
  chiSquareQuantile,
  chiSquareUpperTail,
  criticalValue,
  fCdf,
  fQuantile,
  fUpperTail,
  hedgesCorrection,
  hypergeometric,
  logGamma,
  noncentralTCdf,
  normalCdf,
  normalQuantile,
  studentCdf,
  studentQuantile,
  twoSidedP,
  upperP,
} from "../../../src/core/statistics/distributions";

const { jStat } = jstat;

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const df = within(1, 300);
const chance = within(1e-4, 1 - 1e-4);

/** Meets a value to a relative closeness. */
function near(actual: number, expected: number, relative = 1e-8): void {
  const miss = Math.abs(actual - expected) / Math.abs(expected);
  expect(miss, `${actual} against ${expected}`).toBeLessThanOrEqual(relative);
}

describe("against jStat, an independent library exact to about 1e-8", () => {
  test("normal", () => {
    fc.assert(fc.property(within(-5, 5), (z) => near(normalCdf(z), jStat.normal.cdf(z, 0, 1))));
  });

  test("Student's t", () => {
    fc.assert(
      fc.property(within(-6, 6), df, (t, d) =>
        near(studentCdf(t, d), jStat.studentt.cdf(t, d), 1e-7),
      ),
    );
  });

  test("chi-square", () => {
    fc.assert(
      fc.property(within(0.01, 200), df, (x, d) => {
        const [lower, upper] = [chiSquareCdf(x, d), chiSquareUpperTail(x, d)];
        expect(lower).toBeCloseTo(jStat.chisquare.cdf(x, d), 7);
        expect(lower + upper).toBeCloseTo(1, 12);
      }),
    );
  });

  test("F", () => {
    fc.assert(
      fc.property(within(0.01, 20), df, df, (x, d1, d2) => {
        const [lower, upper] = [fCdf(x, d1, d2), fUpperTail(x, d1, d2)];
        expect(lower).toBeCloseTo(jStat.centralF.cdf(x, d1, d2), 7);
        expect(lower + upper).toBeCloseTo(1, 12);
      }),
    );
  });

  test("noncentral t", () => {
    fc.assert(
      fc.property(within(-4, 8), within(2, 100), within(0, 6), (t, d, ncp) => {
        expect(noncentralTCdf(t, d, ncp)).toBeCloseTo(jStat.noncentralt.cdf(t, d, ncp), 7);
      }),
    );
  });
});

describe("against the quantiles of stdlib", () => {
  test("Student's t", () => {
    fc.assert(
      fc.property(chance, df, (p, d) => {
        fc.pre(Math.abs(p - 0.5) > 1e-3);
        near(studentQuantile(p, d), studentQuantileOfStdlib(p, d));
        near(studentCdf(-3, d), studentCdfOfStdlib(-3, d), 1e-10);
      }),
    );
  });

  test("chi-square", () => {
    fc.assert(
      fc.property(chance, df, (p, d) =>
        near(chiSquareQuantile(p, d), chiSquareQuantileOfStdlib(p, d)),
      ),
    );
  });

  test("F", () => {
    fc.assert(
      fc.property(chance, df, df, (p, d1, d2) =>
        near(fQuantile(p, d1, d2), fQuantileOfStdlib(p, d1, d2)),
      ),
    );
  });
});

describe("a quantile undoes its distribution, far tails included", () => {
  const tail = within(-200, -0.5).map((exponent) => 10 ** exponent);

  test("normal", () => {
    fc.assert(fc.property(tail, (p) => near(normalCdf(normalQuantile(p)), p, 1e-10)));
  });

  test("Student's t", () => {
    fc.assert(
      fc.property(within(-60, -0.5), within(1, 1e6), (exponent, d) => {
        const p = 10 ** exponent;
        near(studentCdf(studentQuantile(p, d), d), p, 1e-9);
      }),
    );
  });

  test("chi-square", () => {
    fc.assert(
      fc.property(chance, within(0.5, 1e5), (p, d) => {
        const x = chiSquareQuantile(p, d);
        near(chiSquareCdf(x, d), p, 1e-9);
      }),
    );
  });

  test("F, on fractions of degrees of freedom too", () => {
    fc.assert(
      fc.property(chance, within(0.5, 1e4), within(0.5, 1e4), (p, d1, d2) => {
        near(fCdf(fQuantile(p, d1, d2), d1, d2), p, 1e-9);
      }),
    );
  });
});

describe("far tails", () => {
  test("never come out as 0 by subtracting from 1", () => {
    // R 4.2.2: 2 * pt(-12.94627, 136.875); 2 * pnorm(-10.6246514); pchisq(152.232954, 12, lower = FALSE)
    near(twoSidedP(12.94627, 136.875), 1.57088026e-25, 1e-6);
    near(twoSidedP(-12.94627, 136.875), 1.57088026e-25, 1e-6);
    near(twoSidedP(10.6246514), 2.28865713e-26, 1e-6);
    near(chiSquareUpperTail(152.232954, 12), 1.99681497e-26, 1e-6);
  });

  test("of Student's t on 1 degree of freedom are those of the Cauchy distribution", () => {
    for (const t of [1e-6, 0.3, 1, 40, 1e6, 1e40]) {
      near(upperP(t, 1), Math.atan2(1, t) / Math.PI, 1e-10);
    }
  });

  test("of F on 2 and d are a plain power", () => {
    for (const x of [1e-9, 0.5, 3, 1e8])
      near(fUpperTail(x, 2, 7), (1 + (2 * x) / 7) ** -3.5, 1e-11);
  });
});

describe("Student's t on very many degrees of freedom", () => {
  test("is normal, without a step where the one gives way to the other", () => {
    const normal = twoSidedP(1.96);
    let last = twoSidedP(1.96, 1e3);
    for (const d of [1e5, 1e7, 1e9, 9e9, 1.1e10, 1e12, 1e300]) {
      const p = twoSidedP(1.96, d);
      expect(p).toBeLessThanOrEqual(last * (1 + 1e-9));
      last = p;
    }
    near(last, normal, 1e-12);
    near(criticalValue(0.95, 1e9), criticalValue(0.95), 1e-8);
  });
});

describe("the noncentral t distribution", () => {
  /** The defining integral by Simpson's rule on a fine grid of S. */
  function byDefinition(t: number, d: number, ncp: number): number {
    const most = 1 + 12 / Math.sqrt(d);
    const steps = 40_000;
    const scale = Math.log(2) + (d / 2) * Math.log(d / 2) - logGamma(d / 2);
    let sum = 0;
    for (let i = 0; i <= steps; i++) {
      const s = (most * i) / steps;
      const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
      const density = s === 0 ? 0 : Math.exp(scale + (d - 1) * Math.log(s) - (d * s * s) / 2);
      sum += weight * density * normalCdf(t * s - ncp);
    }
    return (sum * most) / steps / 3;
  }

  test("is its defining integral, on both sides of where the sum changes its variable", () => {
    const cases = [
      [2, 2, 1],
      [-1, 3, 0.5],
      [9, 39, 8.99],
      [9, 39, 9.01],
      [9, 41, 9.01],
      [12, 5, 11],
      [40, 3, 50],
      [60, 4, 30],
      [4, 200, 3],
    ] as const;
    for (const [t, d, ncp] of cases) {
      expect(noncentralTCdf(t, d, ncp)).toBeCloseTo(byDefinition(t, d, ncp), 9);
    }
  });

  test("is Student's t where there is no difference", () => {
    fc.assert(
      fc.property(within(-20, 20), within(1, 1e4), (t, d) => {
        expect(noncentralTCdf(t, d, 0)).toBeCloseTo(studentCdf(t, d), 10);
      }),
    );
  });

  test("mirrors itself", () => {
    fc.assert(
      fc.property(within(-9, 9), df, within(-30, 30), (t, d, ncp) => {
        expect(noncentralTCdf(t, d, ncp) + noncentralTCdf(-t, d, -ncp)).toBeCloseTo(1, 12);
      }),
    );
  });

  test("stays a probability however absurd the difference", () => {
    for (const ncp of [1e3, 1e10, 1e200]) {
      for (const t of [1e-300, 2, 1e200]) {
        const p = noncentralTCdf(t, 3, ncp);
        expect(p).toBeGreaterThanOrEqual(0);
        expect(p).toBeLessThanOrEqual(1);
      }
    }
  });
});

describe("the critical value", () => {
  test("is the textbook multiplier", () => {
    // NIST/SEMATECH e-Handbook 1.3.6.7.2 for t; 1.960 and 2.576 in any table of the normal.
    expect(criticalValue(0.95).toFixed(3)).toBe("1.960");
    expect(criticalValue(0.99).toFixed(3)).toBe("2.576");
    expect(criticalValue(0.95, 10).toFixed(3)).toBe("2.228");
  });

  test("leaves exactly 1 − confidence outside", () => {
    fc.assert(
      fc.property(within(0.01, 0.9999), df, (confidence, d) => {
        near(twoSidedP(criticalValue(confidence, d), d), 1 - confidence, 1e-9);
        near(twoSidedP(criticalValue(confidence)), 1 - confidence, 1e-9);
      }),
    );
  });

  test("refuses a confidence written as a percentage, and no degrees of freedom", () => {
    expect(() => criticalValue(95)).toThrow(/confidence is 95/);
    expect(() => criticalValue(0)).toThrow(BadInput);
    expect(() => criticalValue(0.95, 0)).toThrow(BadInput);
    expect(() => twoSidedP(2, -1)).toThrow(BadInput);
  });
});

describe("Hedges' correction", () => {
  test("does not jump where the series takes over", () => {
    near(hedgesCorrection(999.999999), hedgesCorrection(1000.000001), 1e-10);
  });

  test("approaches 1 − 3 / (4 df − 1), and 1", () => {
    // Hedges 1981, J Educ Stat 6:107-128, the approximation given there.
    near(hedgesCorrection(200), 1 - 3 / (4 * 200 - 1), 1e-5);
    near(hedgesCorrection(1e6), 1 - 3 / (4e6 - 1), 1e-11);
    expect(hedgesCorrection(1e50)).toBe(1);
  });

  test("needs 2 degrees of freedom", () => {
    expect(() => hedgesCorrection(1)).toThrow(NoAnswer);
  });
});

describe("the hypergeometric distribution", () => {
  const choose = (n: number, k: number): bigint => {
    let ways = 1n;
    for (let i = 1; i <= k; i++) ways = (ways * BigInt(n - k + i)) / BigInt(i);
    return ways;
  };

  test("counts the ways", () => {
    fc.assert(
      fc.property(fc.nat(60), fc.nat(60), fc.nat(120), (marked, others, draw) => {
        const total = marked + others;
        const drawn = Math.min(draw, total);
        const { least, chances } = hypergeometric(total, marked, drawn);
        const all = Number(choose(total, drawn));
        chances.forEach((p, i) => {
          const ways = choose(marked, least + i) * choose(others, drawn - least - i);
          near(p, Number(ways) / all, 1e-11);
        });
        expect(chances.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
      }),
    );
  });
});
