import { describe, expect, it } from "vitest";
import { e1rmBand, e1rmBandOfAll } from "../../../src/core/strength/oneRepMax";
import { equations } from "../../../src/core/strength/equations";

describe("the e1RM band of one equation", () => {
  const { epley, brzycki } = equations;

  it("goes from as many reps fewer than called to as many more: 30 + t thirtieths by Epley", () => {
    const { low, estimate, high } = e1rmBand(100, 5, 2, 1, epley);
    expect([low, estimate, high].map((each) => each * 0.3)).toEqual(
      [36, 37, 38].map((each) => expect.closeTo(each, 10)),
    );
  });

  it("never goes below the reps that were done", () => {
    const { low, estimate } = e1rmBand(100, 5, 1, 3, epley);
    expect(low).toBeCloseTo(100 * (35 / 30), 10);
    expect(estimate).toBeCloseTo(100 * (36 / 30), 10);
  });

  it("ends where the equation does", () => {
    expect(e1rmBand(60, 13, 1, 1, brzycki).high).toBeCloseTo(60 * (36 / 22), 10);
    expect(() => e1rmBand(60, 14, 1, 1, brzycki)).toThrow(
      "reps plus reserve plus reserveError is 16; expected at most 15 for this equation",
    );
  });
});

describe("the e1RM band over all equations", () => {
  it("is as wide as the equations differ: 60 for 20 reps is 81 to 102", () => {
    const { low, estimate, high } = e1rmBandOfAll(60, 20, 0, 1);
    // Lombardi's says least, from the 20 reps that were done; Epley's most, with one more left.
    expect(low).toBeCloseTo(60 / 20 ** -0.1, 10);
    expect(estimate).toBeCloseTo(100, 10);
    expect(high).toBeCloseTo(102, 10);
  });

  it("holds the band of every equation that reaches so far", () => {
    const all = e1rmBandOfAll(100, 5, 2, 1);
    const bands = Object.values(equations).map((one) => e1rmBand(100, 5, 2, 1, one));
    expect(all.low).toBe(Math.min(...bands.map(({ low }) => low)));
    expect(all.high).toBe(Math.max(...bands.map(({ high }) => high)));
    expect(all.estimate).toBe(e1rmBand(100, 5, 2, 1, equations.epley).estimate);
  });

  it("leaves out the straight lines past their reach, and ends where the last equation does", () => {
    expect(e1rmBandOfAll(60, 14, 0, 1).low).toBeLessThan(60 / equations.lander.fraction(14));
    expect(() => e1rmBandOfAll(60, 16, 0, 1)).not.toThrow();
    expect(() => e1rmBandOfAll(60, 14, 1, 1)).not.toThrow();
    // At their cap they still count: Brzycki's says most there.
    expect(e1rmBandOfAll(60, 13, 1, 1).high).toBeCloseTo(60 * (36 / 22), 10);
    expect(() => e1rmBandOfAll(60, 30, 0, 1)).toThrow("expected at most 30 for this equation");
  });
});
