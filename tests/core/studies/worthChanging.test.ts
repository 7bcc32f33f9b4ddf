import { describe, expect, it } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import { worthChanging } from "../../../src/core/studies/worthChanging";
import { expectAllNear } from "./matching";
import { sixStudies } from "./published";

const newStudy = { effect: 0.5, standardError: 0.2 };
const squad = { sd: 10, smallest: 1 };

/** Studies that agree on an effect, closely measured. */
const agreeing = (effect: number) => ({
  effects: [effect - 0.02, effect + 0.01, effect + 0.01, effect],
  standardErrors: [0.05, 0.05, 0.05, 0.05],
});

describe("whether the next block should change", () => {
  it("is, for the six studies of Borenstein et al. 2009 and a new one, what own R code gives", () => {
    const result = worthChanging(sixStudies, newStudy, squad);
    expectAllNear(result, {
      before: 0.361303968,
      beforeLow: -0.245415948,
      beforeHigh: 0.943038576,
      shrunkNewStudy: 0.437097104,
      shrunkLow: 0.157408785,
      shrunkHigh: 0.736712371,
      expectedGain: 3.81333424,
      gainLow: -1.48933466,
      gainHigh: 8.8999261,
      chanceAboveSmallest: 0.895341914,
      chanceBelowMinusSmallest: 0.0329331147,
    });
    expect(result.reading).toBe("change");
  });

  it("is what own R code gives for six and for two invented studies", () => {
    const six = {
      effects: [0.2, 0.35, 0.5, 0.1, 0.42, 0.6],
      standardErrors: [0.15, 0.2, 0.18, 0.12, 0.22, 0.25],
    };
    const result = worthChanging(six, newStudy, squad);
    expectAllNear(result, {
      before: 0.314707837,
      beforeLow: -0.135223921,
      beforeHigh: 0.812792687,
      shrunkNewStudy: 0.384201767,
      shrunkLow: 0.147102834,
      shrunkHigh: 0.690671581,
      expectedGain: 3.36079801,
      gainLow: -0.710706106,
      gainHigh: 7.86491624,
      chanceAboveSmallest: 0.916724453,
      chanceBelowMinusSmallest: 0.0207087281,
    });
    expect(result.reading).toBe("change");
    const two = { effects: [0.2, 0.4], standardErrors: [0.15, 0.2] };
    const next = { effect: 0.3, standardError: 0.1 };
    const few = worthChanging(two, next, { sd: 10, smallest: 0 });
    expectAllNear(few, {
      before: 0.287091468,
      beforeLow: -0.711420049,
      beforeHigh: 1.30544525,
      chanceAboveSmallest: 0.910722186,
      chanceBelowMinusSmallest: 0.0892778141,
    });
    expect(few.reading).toBe("test it first");
  });

  it("draws a new study toward the earlier ones, the more the less precise it is", () => {
    const of = (standardError: number) =>
      worthChanging(sixStudies, { effect: 2, standardError }, squad);
    expect(of(1e-6).shrunkNewStudy).toBeCloseTo(2, 6);
    expect(of(1e6).shrunkNewStudy).toBeCloseTo(of(1e6).before, 6);
    expect(of(0.2).shrunkNewStudy).toBeGreaterThan(of(0.4).shrunkNewStudy);
  });

  it("calls itself less sure where a wider spread between studies may be", () => {
    const width = (scale: number) => {
      const { gainLow, gainHigh } = worthChanging(sixStudies, newStudy, squad, { scale });
      return gainHigh - gainLow;
    };
    expect(width(0.1)).toBeLessThan(width(0.5));
    expect(width(0.5)).toBeLessThan(width(2));
  });

  it('reads "change", "keep" or "test it first" by the chances', () => {
    const read = (effect: number, smallest: number) =>
      worthChanging(agreeing(effect), { effect, standardError: 0.05 }, { sd: 10, smallest });
    expect(read(0.5, 2).reading).toBe("change");
    expect(read(0.05, 2).reading).toBe("keep");
    expect(read(-0.5, 2).reading).toBe("keep");
    expect(read(0.2, 2).reading).toBe("test it first");
    expect(read(-0.5, 2).chanceBelowMinusSmallest).toBeGreaterThan(0.99);
  });

  it('does not read "change" where harm is too likely, however likely the gain', () => {
    const scattered = {
      effects: [2.5, 0.2, 1.6, 0.1, 1.2, 0.9],
      standardErrors: Array(6).fill(0.1),
    };
    const result = worthChanging(
      scattered,
      { effect: 0.8, standardError: 0.1 },
      { sd: 1, smallest: 0 },
    );
    expect(result.chanceAboveSmallest).toBeGreaterThan(0.8);
    expect(result.chanceBelowMinusSmallest).toBeGreaterThan(0.05);
    expect(result.reading).toBe("test it first");
  });

  it("with smallest 0, the two chances are all there is", () => {
    const { chanceAboveSmallest, chanceBelowMinusSmallest } = worthChanging(sixStudies, newStudy, {
      sd: 10,
      smallest: 0,
    });
    expect(chanceAboveSmallest + chanceBelowMinusSmallest).toBeCloseTo(1, 12);
  });

  it("foretells from two earlier studies and a new one, but not from one", () => {
    const two = { effects: [0.2, 0.4], standardErrors: [0.1, 0.2] };
    const result = worthChanging(two, newStudy, squad);
    expect(result.beforeLow).toBeLessThan(result.before);
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
