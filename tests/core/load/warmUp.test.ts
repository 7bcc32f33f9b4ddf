import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { COMMON_STEPS, warmUpSets } from "../../../src/core/load/warmUp";

describe("warm-up sets", () => {
  it("climb by common practice: 40% × 8, 60% × 5, 75% × 3, 90% × 1", () => {
    expect(warmUpSets(100, { bar: 20, increment: 2.5 })).toEqual([
      { load: 40, reps: 8 },
      { load: 60, reps: 5 },
      { load: 75, reps: 3 },
      { load: 90, reps: 1 },
    ]);
  });

  it("take steps of one's own, to the nearest increment", () => {
    const steps = [
      { fraction: 0.5, reps: 5 },
      { fraction: 0.8, reps: 2 },
    ];
    // 0.8 × 40 = 32 is nearer 32.5.
    expect(warmUpSets(40, { bar: 20, increment: 2.5, steps })).toEqual([
      { load: 20, reps: 5 },
      { load: 32.5, reps: 2 },
    ]);
  });

  it("round an exact tie down", () => {
    const steps = [{ fraction: 0.75, reps: 3 }];
    // 0.75 × 115 = 86.25 lies between 85 and 87.5.
    expect(warmUpSets(115, { increment: 2.5, steps })).toEqual([{ load: 85, reps: 3 }]);
  });

  it("keep two steps on the bar, and are not rounded unless asked", () => {
    expect(warmUpSets(30, { bar: 20 }).map(({ load }) => load)).toEqual([20, 20, 22.5, 27]);
    expect(warmUpSets(33)[0]).toEqual({ load: 33 * 0.4, reps: 8 });
    expect(warmUpSets(2)[0]).toEqual({ load: 0.8, reps: 8 });
  });

  it("leave out what is not lighter than the work set: a bar as heavy, or a step rounded up to it", () => {
    expect(warmUpSets(20, { bar: 20 })).toEqual([]);
    expect(warmUpSets(20.5, { bar: 20 })).toHaveLength(4);
    // 0.9 × 35 = 31.5 is nearer 40 than 20 in steps of 20.
    expect(warmUpSets(35, { bar: 20, increment: 20 })).toEqual([
      { load: 20, reps: 8 },
      { load: 20, reps: 5 },
      { load: 20, reps: 3 },
    ]);
    expect(warmUpSets(100, { steps: [{ fraction: 1, reps: 1 }] })).toEqual([]);
  });

  it("never fall, never go below the bar, and keep to the increment above it", () => {
    const halves = fc.integer({ min: 40, max: 600 }).map((n) => n / 2);
    fc.assert(
      fc.property(
        halves,
        fc.constantFrom(0, 10, 20),
        fc.constantFrom(0, 1, 2.5),
        (load, bar, by) => {
          const sets = warmUpSets(load, { bar, increment: by });
          const steps = COMMON_STEPS.slice(0, sets.length);
          expect(sets.map(({ reps }) => reps)).toEqual(steps.map(({ reps }) => reps));
          sets.forEach((set, i) => {
            expect(set.load).toBeLessThan(load);
            expect(set.load).toBeGreaterThanOrEqual(Math.max(bar, sets[i - 1]?.load ?? 0));
            const exact = COMMON_STEPS[i]!.fraction * load;
            if (set.load > bar)
              expect(Math.abs(set.load - exact)).toBeLessThanOrEqual(by / 2 + 1e-9);
            if (by > 0 && set.load > bar) expect((set.load / by) % 1).toBe(0);
          });
        },
      ),
    );
  });

  it("name the step that cannot be right", () => {
    const good = { fraction: 0.5, reps: 5 };
    const second = (fraction: number, reps: number, row?: number) => () =>
      warmUpSets(100, { steps: [good, { fraction, reps, row }] });
    expect(second(40, 8)).toThrow("step 2: fraction is 40; expected above 0 and at most 1");
    expect(second(0, 8)).toThrow("step 2: fraction is 0");
    expect(second(1.5, 8)).toThrow("step 2: fraction is 1.5");
    expect(second(0.4, 0)).toThrow("step 2: reps is 0; expected a whole number");
    expect(second(0.4, 101)).toThrow("reps is 101; expected a whole number from 1 to 100");
    expect(second(0.4, 2.5, 6)).toThrow("step 6: reps is 2.5");
    expect(() => warmUpSets(15, { bar: 20 })).toThrow("load is 15; expected at least the bar, 20");
    expect(() => warmUpSets(0)).toThrow("load is 0; expected above 0");
    expect(() => warmUpSets(100, { bar: -1 })).toThrow("bar is -1; expected at least 0");
    expect(() => warmUpSets(100, { increment: -1 })).toThrow("increment is -1");
  });
});
