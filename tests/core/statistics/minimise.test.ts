import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { minimiseBounded } from "../../../src/core/statistics/minimise";

const place = fc.double({ min: -100, max: 100, noNaN: true });

describe("a minimum between bounds", () => {
  it("is R's own for its help page's example: optimise of (x − 1/3)² on 0 to 1 is 1/3", () => {
    const found = minimiseBounded((x) => (x - 1 / 3) ** 2, 0, 1, 1e-9);
    expect(found.at).toBeCloseTo(1 / 3, 8);
    expect(found.value).toBeLessThan(1e-15);
  });

  it("is found wherever a parabola's or a kink's lowest point lies inside", () => {
    fc.assert(
      fc.property(place, fc.double({ min: 0.01, max: 50, noNaN: true }), (at, reach) => {
        const smooth = minimiseBounded((x) => (x - at) ** 2 + 3, at - reach, at + 2 * reach, 1e-9);
        expect(Math.abs(smooth.at - at)).toBeLessThan(1e-6 * (1 + Math.abs(at)));
        const kink = minimiseBounded((x) => Math.abs(x - at), at - reach, at + 2 * reach, 1e-9);
        expect(Math.abs(kink.at - at)).toBeLessThan(1e-6 * (1 + Math.abs(at)));
      }),
    );
  });

  it("is the bound itself, exactly, where the function only climbs or only falls", () => {
    expect(minimiseBounded((x) => Math.exp(x), 0, 5, 1e-9)).toEqual({ at: 0, value: 1 });
    expect(minimiseBounded((x) => -(x ** 3), 0, 5, 1e-9)).toEqual({ at: 5, value: -125 });
  });

  it("settles on a flat function, and where the two bounds are one", () => {
    expect(minimiseBounded(() => 7, 0, 1, 1e-9).value).toBe(7);
    expect(minimiseBounded((x) => x, 2, 2, 1e-9)).toEqual({ at: 2, value: 2 });
  });

  it("says so when the function has no value, rather than go on", () => {
    expect(() => minimiseBounded(() => NaN, 0, 1, 1e-9)).toThrow("a value that is none");
  });
});
