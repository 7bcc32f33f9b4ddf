import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalCdf, normalQuantile } from "../../../src/core/statistics/normal";
import {
  mixtureAbove,
  mixtureBelow,
  mixtureMean,
  mixtureQuantile,
  type NormalMixture,
} from "../../../src/core/statistics/normalMixture";

const anyMixture = fc
  .array(
    fc.record({
      weight: fc.double({ min: 1e-9, max: 1, noNaN: true }),
      mean: fc.double({ min: -10, max: 10, noNaN: true }),
      sd: fc.double({ min: 1e-4, max: 10, noNaN: true }),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map((parts): NormalMixture => {
    const total = parts.reduce((sum, { weight }) => sum + weight, 0);
    return parts.map((part) => ({ ...part, weight: part.weight / total }));
  });

describe("a mixture of normal distributions", () => {
  it("has its quantiles where its distribution has that chance below", () => {
    fc.assert(
      fc.property(
        anyMixture,
        fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }),
        (mixture, p) => {
          const x = mixtureQuantile(mixture, p);
          expect(mixtureBelow(mixture, x - 2e-10)).toBeLessThanOrEqual(p + 1e-12);
          expect(mixtureBelow(mixture, x + 2e-10)).toBeGreaterThanOrEqual(p - 1e-12);
        },
      ),
      { numRuns: 500 },
    );
  });

  it("is a normal distribution where it has one component, or several alike", () => {
    const half = { weight: 0.5, mean: 3, sd: 2 };
    expect(mixtureQuantile([half, half], 0.975)).toBeCloseTo(3 + 2 * normalQuantile(0.975), 9);
    expect(mixtureMean([half, half])).toBe(3);
    expect(mixtureAbove([half, half], 0)).toBeCloseTo(normalCdf(1.5), 14);
  });

  it("is as exact at a peak a thousand times narrower than the heaviest", () => {
    // Found among random ones: a step that is short beside the heaviest component is long beside this peak.
    const mixture = [
      { weight: 0.7803, mean: -2.983, sd: 2.71459 },
      { weight: 0.1138, mean: 1.649, sd: 8.60672 },
      { weight: 0.1059, mean: 1.517, sd: 0.0002 },
    ];
    for (const p of [0.87, 0.8896331, 0.9, 0.93]) {
      expect(mixtureBelow(mixture, mixtureQuantile(mixture, p)) / p).toBeCloseTo(1, 12);
    }
  });

  it("finds the gap between two peaks far apart", () => {
    const mixture = [
      { weight: 0.3, mean: -100, sd: 1 },
      { weight: 0.7, mean: 100, sd: 1 },
    ];
    expect(mixtureBelow(mixture, mixtureQuantile(mixture, 0.3))).toBeCloseTo(0.3, 9);
    expect(mixtureQuantile(mixture, 0.15)).toBeCloseTo(-100, 6);
    expect(mixtureAbove(mixture, 0)).toBeCloseTo(0.7, 12);
    expect(mixtureMean(mixture)).toBeCloseTo(40, 12);
  });
});
