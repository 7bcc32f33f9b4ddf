import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nextLoad, roundedLoad, targetLoad } from "../../../src/core/load/targetLoad";
import { equations } from "../../../src/core/strength/equations";

const { epley } = equations;
const quarters = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 4);

describe("a load for a target", () => {
  it("is never rounded above the one-repetition maximum", () => {
    expect(targetLoad(141.3, 1, 2.5, epley)).toBe(140);
    expect(targetLoad(26, 1, 10, epley)).toBe(20);
    expect(targetLoad(26, 1, 30, epley)).toBe(0);
    // Where the nearest multiple is below the maximum, up is as good as down.
    expect(targetLoad(141.3, 2, 2.5, epley)).toBe(132.5);
    expect(targetLoad(140, 1, 2.5, epley)).toBe(140);
    // Three times 46.7 is 140.1 but for binary dust.
    expect(targetLoad(46.7 * 3, 1, 0.1, epley)).toBeCloseTo(140.1, 9);
  });

  it("is the nearest multiple wherever that is no more than the maximum, else the next one below", () => {
    fc.assert(
      fc.property(
        quarters(40, 1000),
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        fc.constantFrom(0.5, 1, 2.5, 5, 10, 20),
        (oneRepMax, share, increment) => {
          const load = oneRepMax * share;
          const rounded = roundedLoad(load, oneRepMax, increment);
          expect(rounded).toBeLessThanOrEqual(oneRepMax * (1 + 1e-9));
          expect((rounded / increment) % 1).toBe(0);
          if (rounded + increment <= oneRepMax) {
            expect(Math.abs(rounded - load)).toBeLessThanOrEqual(increment / 2 + 1e-6);
          } else {
            expect(rounded).toBeGreaterThan(load - increment);
          }
        },
      ),
    );
  });
});

describe("the load of the next set", () => {
  it("follows from the e1RM of the set just done", () => {
    const done = { load: 100, reps: 8, reserve: 2 };
    expect(nextLoad(done, 6, 0, epley)).toBeCloseTo(111.111111111, 8);
    expect(nextLoad(done, 6, 2.5, epley)).toBe(110);
  });

  it("is not set by a call of more than 5 reps left", () => {
    const called = (reserve: number) => () =>
      nextLoad({ load: 100, reps: 8, reserve }, 6, 2.5, epley);
    expect(called(10)).toThrow("reserve is 10; expected at most 5, as a call further from failure");
    expect(called(5.5)).toThrow("reserve is 5.5");
    expect(called(5)()).toBe(120);
  });

  it("is never rounded above the maximum that the set implies", () => {
    expect(nextLoad({ load: 141.3, reps: 1, reserve: 0 }, 1, 2.5, epley)).toBe(140);
    expect(nextLoad({ load: 26, reps: 1, reserve: 0 }, 1, 10, epley)).toBe(20);
  });
});
