import { describe, expect, it } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import { poolStudies } from "../../../src/core/studies/poolStudies";
import { worthChanging } from "../../../src/core/studies/worthChanging";
import { expectAllNear, expectNear, ITERATED } from "./matching";
import { sixStudies } from "./published";

const newStudy = { effect: 0.5, standardError: 0.2 };
const squad = { sd: 10, smallest: 1 };

/** Studies that agree on an effect, closely measured. */
const agreeing = (effect: number) => ({
  effects: [effect - 0.02, effect + 0.01, effect + 0.01, effect],
  standardErrors: [0.05, 0.05, 0.05, 0.05],
});

describe("whether the next block should change", () => {
  it("is, for the six studies of Borenstein et al. 2009 and a new one, what R gives", () => {
    const result = worthChanging(sixStudies, newStudy, squad);
    expectAllNear(
      result,
      {
        before: 0.36035313,
        beforeLow: -0.210724505,
        beforeHigh: 0.931430765,
        shrunkNewStudy: 0.432133652,
        expectedGain: 3.79914761,
        gainLow: -0.98420462,
        gainHigh: 8.58249984,
        chanceWorthIt: 0.903578047,
        chanceHarmful: 0.0247439253,
      },
      ITERATED,
    );
    expect(result.reading).toBe("change");
  });

  it("rests on the same pools as POOLSTUDIES", () => {
    const { effects, standardErrors } = sixStudies;
    const before = poolStudies(effects, standardErrors);
    const all = poolStudies([...effects, 0.5], [...standardErrors, 0.2]);
    const result = worthChanging(sixStudies, newStudy, squad);
    expect(result.before).toBe(before.estimate);
    expectNear(result.beforeHigh, before.predictHigh as number, 1e-12);
    expectNear(result.gainLow, 10 * (all.predictLow as number), 1e-12);
  });

  it("draws a new study toward the earlier ones, the more the less precise it is", () => {
    const of = (standardError: number) =>
      worthChanging(sixStudies, { effect: 2, standardError }, squad);
    expect(of(1e-6).shrunkNewStudy).toBeCloseTo(2, 6);
    expect(of(1e6).shrunkNewStudy).toBeCloseTo(of(1e6).before, 6);
    expect(of(0.2).shrunkNewStudy).toBeGreaterThan(of(0.4).shrunkNewStudy);
    // And the interval is the normal one about it: precisions 1 / V and 1 / s² added up.
    const { shrunkLow, shrunkHigh, beforeLow, beforeHigh } = of(0.2);
    const t4 = 2.77644511; // Student's t, 0.975, 4 df.
    const v = (((beforeHigh as number) - (beforeLow as number)) / 2 / t4) ** 2;
    expectNear(
      shrunkHigh - shrunkLow,
      (2 * 1.95996398) / Math.sqrt(1 / v + 1 / 0.2 ** 2),
      ITERATED,
    );
  });

  it('reads "change", "keep" or "test it first" by the chances', () => {
    const read = (effect: number, smallest: number) =>
      worthChanging(agreeing(effect), { effect, standardError: 0.05 }, { sd: 10, smallest });
    expect(read(0.5, 2).reading).toBe("change");
    expect(read(0.05, 2).reading).toBe("keep");
    expect(read(-0.5, 2).reading).toBe("keep");
    expect(read(0.2, 2).reading).toBe("test it first");
    expect(read(-0.5, 2).chanceHarmful).toBeGreaterThan(0.99);
  });

  it('does not read "change" where harm is too likely, however likely the gain', () => {
    const scattered = {
      effects: [2.5, 0.2, 1.6, 0.1, 1.2, 0.9],
      standardErrors: Array(6).fill(0.1),
    };
    const result = worthChanging(
      scattered as { effects: number[]; standardErrors: number[] },
      { effect: 0.8, standardError: 0.1 },
      { sd: 1, smallest: 0 },
    );
    expect(result.chanceWorthIt).toBeGreaterThan(0.8);
    expect(result.chanceHarmful).toBeGreaterThan(0.05);
    expect(result.reading).toBe("test it first");
  });

  it("with smallest 0, the two chances are all there is", () => {
    const { chanceWorthIt, chanceHarmful } = worthChanging(sixStudies, newStudy, {
      sd: 10,
      smallest: 0,
    });
    expect(chanceWorthIt + chanceHarmful).toBeCloseTo(1, 12);
  });

  it("foretells from two earlier studies and a new one, but not from one", () => {
    const two = { effects: [0.2, 0.4], standardErrors: [0.1, 0.2] };
    const result = worthChanging(two, newStudy, squad);
    expect(result.beforeLow).toHaveProperty("absent");
    expect(result.beforeHigh).toHaveProperty("absent");
    expect(result.gainLow).toBeLessThan(result.expectedGain);
    const one = { effects: [0.2], standardErrors: [0.1] };
    expect(() => worthChanging(one, newStudy, squad)).toThrow(NoAnswer);
  });

  it("refuses what cannot be, by name", () => {
    const { effects } = sixStudies;
    expect(() => worthChanging(sixStudies, { effect: 1, standardError: 0 }, squad)).toThrow(
      new BadInput("newStandardError is 0; expected a number above 0"),
    );
    expect(() => worthChanging(sixStudies, { effect: NaN, standardError: 1 }, squad)).toThrow(
      "newEffect",
    );
    expect(() => worthChanging(sixStudies, newStudy, { sd: 0, smallest: 1 })).toThrow("squadSd");
    expect(() => worthChanging(sixStudies, newStudy, { sd: 1, smallest: -1 })).toThrow("smallest");
    expect(() => worthChanging({ effects, standardErrors: [1] }, newStudy, squad)).toThrow(
      BadInput,
    );
  });
});
