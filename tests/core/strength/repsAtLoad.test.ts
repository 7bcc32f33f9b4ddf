import { describe, expect, it } from "vitest";
import { NoAnswer } from "../../../src/core/problem";
import { equations } from "../../../src/core/strength/equations";
import { repsAtLoad } from "../../../src/core/strength/repsAtLoad";

const { epley, brzycki } = equations;

describe("the reps that a load allows", () => {
  it("are those to failure, less the reserve that is to be left", () => {
    // 30 × (100/80 − 1) and 37 − 36 × 0.8.
    expect(repsAtLoad(80, 100, 0, epley)).toBeCloseTo(7.5, 12);
    expect(repsAtLoad(80, 100, 0, brzycki)).toBeCloseTo(8.2, 12);
    expect(repsAtLoad(80, 100, 2, epley)).toBeCloseTo(5.5, 12);
  });

  it("are one with the maximum, binary dust aside, and none with more", () => {
    expect(repsAtLoad(100, 100, 0, epley)).toBe(1);
    expect(repsAtLoad(3 * 27.6, 82.8, 0, epley)).toBe(1);
    expect(repsAtLoad(100.1, 100, 0, epley)).toBe(0);
  });

  it("are never fewer than none", () => {
    expect(repsAtLoad(95, 100, 4, epley)).toBe(0);
  });

  it("are not known of a load lighter than the equation reaches", () => {
    expect(() => repsAtLoad(40, 100, 0, epley)).toThrow(NoAnswer);
  });
});
