import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planCheck } from "../../../src/core/plan/planCheck";
import { equations } from "../../../src/core/strength/equations";

const { epley, brzycki } = equations;
const planned = { load: 100, reps: 5, reserve: 2 };

describe("a set done against the set planned", () => {
  it("is off by load, reps, reserve and the strength they show together", () => {
    const check = planCheck(planned, { load: 102.5, reps: 5, reserve: 1 }, epley);
    expect(check.loadOff).toBeCloseTo(0.025, 12);
    expect(check.repsOff).toBe(0);
    expect(check.reserveOff).toBe(-1);
    // 102.5 × 36/30 is 123, and 100 × 37/30 is 123.333.
    expect(check.strengthOff).toBeCloseTo(-0.0027027027, 10);
  });

  it("keeps load and reps where no reserve was planned or recorded", () => {
    const done = planCheck(planned, { load: 95, reps: 6 }, epley);
    expect(done).toEqual({
      loadOff: -0.05,
      repsOff: 1,
      reserveOff: { absent: "no reserve was recorded for this set" },
      strengthOff: { absent: "no reserve was recorded for this set" },
    });
    const open = planCheck({ load: 100, reps: 5 }, { load: 95, reps: 6, reserve: 1 }, epley);
    expect(open.reserveOff).toEqual({ absent: "no reserve was planned for this set" });
  });

  it("finds nothing off in a set done as planned, and no strength in trading load for reserve", () => {
    const load = fc.double({ min: 20, max: 300, noNaN: true });
    const count = fc.integer({ min: 1, max: 8 });
    fc.assert(
      fc.property(load, count, count, count, (kilograms, reps, reserve, otherReserve) => {
        const plan = { load: kilograms, reps, reserve };
        expect(planCheck(plan, plan, epley)).toEqual({
          loadOff: 0,
          repsOff: 0,
          reserveOff: 0,
          strengthOff: 0,
        });
        const ratio = epley.fraction(reps + otherReserve) / epley.fraction(reps + reserve);
        const traded = { load: kilograms * ratio, reps, reserve: otherReserve };
        expect(planCheck(plan, traded, epley).strengthOff).toBeCloseTo(0, 10);
      }),
    );
  });

  it("says which of the two sets cannot be right", () => {
    const done = { load: 100, reps: 5, reserve: 2 };
    expect(() => planCheck({ ...planned, load: 0 }, done, epley)).toThrow(
      "the planned set: load is 0; expected above 0",
    );
    expect(() => planCheck(planned, { ...done, reps: 0 }, epley)).toThrow(
      "the set done: reps is 0; expected at least 1",
    );
    expect(() => planCheck(planned, { ...done, reserve: -1 }, epley)).toThrow(
      "the set done: reserve is -1; expected at least 0",
    );
    expect(() => planCheck(planned, { ...done, reps: 14 }, brzycki)).toThrow(
      "the set done: reps plus reserve is 16",
    );
    expect(() => planCheck({ ...planned, reps: 14 }, done, brzycki)).toThrow(
      "the planned set: reps plus reserve is 16",
    );
  });
});
