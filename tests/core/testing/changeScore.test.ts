import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
import { changeReading } from "../../../src/core/testing/changeReading";
import { changeScore } from "../../../src/core/testing/changeScore";
import { minimalDetectableChange } from "../../../src/core/testing/minimalDetectableChange";
import { smallestWorthwhileChange } from "../../../src/core/testing/smallestWorthwhileChange";
import { expectAllNear, expectNear, expectPrinted } from "../studies/matching";
import { expectNoNonsense, reasonOf } from "./finite";
import { weir } from "./published";

describe("the minimal detectable change", () => {
  test("is SEM × 1.96 × √2 (Weir 2005, J Strength Cond Res 19:231-240)", () => {
    expectPrinted(minimalDetectableChange(7.6, 0.95), "21.07");
  });

  test("has the values of R 4.2.2 (qnorm, qt)", () => {
    expectNear(minimalDetectableChange(1, 0.9), 2.32617431);
    expectNear(minimalDetectableChange(1, 0.95), 2.77180765);
    expectNear(minimalDetectableChange(1, 0.95, 7), 3.34408369);
    expectNear(minimalDetectableChange(7.6, 0.9, 20), 18.5373115);
  });

  test("needs a typical error above 0 and a confidence inside (0, 1)", () => {
    expect(() => minimalDetectableChange(0, 0.95)).toThrow(BadInput);
    expect(() => minimalDetectableChange(-1, 0.95)).toThrow(BadInput);
    expect(() => minimalDetectableChange(5, 1)).toThrow(BadInput);
  });
});

describe("the smallest worthwhile change", () => {
  const scores = weir.map(([first]) => first!);

  test("is a fraction of the spread between athletes (R 4.2.2, sd)", () => {
    expectNear(smallestWorthwhileChange(scores, 0.2), 6.55438784);
    expectNear(smallestWorthwhileChange(scores, 0.6), 19.6631635);
  });

  test("needs scores that differ", () => {
    expect(() => smallestWorthwhileChange([80], 0.2)).toThrow(NoAnswer);
    expect(() => smallestWorthwhileChange([80.1, 80.1, 80.1], 0.2)).toThrow(NoAnswer);
    expect(() => smallestWorthwhileChange(scores, -0.2)).toThrow(BadInput);
  });
});

describe("the change of one athlete", () => {
  const retest = { before: 146, after: 170, typicalError: 7.556927, smallest: 0, confidence: 0.95 };

  test("has the values of R 4.2.2 (pnorm, qnorm)", () => {
    const result = changeScore(retest);
    expectAllNear(result, {
      change: 24,
      percent: 0.164383562,
      low: 3.05365194,
      high: 44.9463481,
      ratio: 2.24569627,
      p: 0.0247234695,
      chance: 0.987638265,
    });
    expect(result.reading).toBe("real increase");
  });

  test("is within test error where test error alone often goes as far (R 4.2.2)", () => {
    const result = changeScore({ ...retest, after: 160 });
    expectAllNear(result, {
      change: 14,
      low: -6.94634806,
      high: 34.9463481,
      p: 0.190199392,
      chance: 0.904900304,
    });
    expect(result.reading).toBe("within test error");
  });

  test("may be real and still, perhaps, too small to matter (R 4.2.2)", () => {
    const result = changeScore({ ...retest, smallest: 30 });
    expectAllNear(result, { p: 0.0247234695, chance: 0.287254241 });
    expect(result.reading).toBe("real increase, perhaps too small to matter");
  });

  test("is judged by t where the typical error comes from few athletes (R 4.2.2, pt)", () => {
    const result = changeScore({ ...retest, smallest: 5, df: 7 });
    expectAllNear(result, {
      low: -1.2709963,
      high: 49.2709963,
      p: 0.0595751376,
      chance: 0.940665735,
    });
    expect(result.reading).toBe("within test error");
  });

  test("is judged by what its interval leaves open, with and without a sure typical error (R 4.2.2)", () => {
    const score = { before: 150, after: 160, typicalError: 3, smallest: 4, confidence: 0.95 };
    const known = changeScore(score);
    expectAllNear(known, {
      change: 10,
      percent: 0.0666666667,
      low: 1.68457705,
      high: 18.3154229,
      ratio: 2.3570226,
      p: 0.0184221255,
      chance: 0.921350396,
    });
    expect(known.reading).toBe("real increase, perhaps too small to matter");
    const estimated = changeScore({ ...score, df: 12 });
    expectAllNear(estimated, {
      low: 0.756080039,
      high: 19.24392,
      p: 0.0362470248,
      chance: 0.908641619,
    });
    expect(estimated.reading).toBe("real increase, perhaps too small to matter");
  });

  test("is real exactly where it is beyond the minimal detectable change", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.double({ min: -5, max: 5, noNaN: true }),
        fc.constantFrom(0.68, 0.9, 0.95, 0.99),
        fc.constantFrom(undefined, 3, 7, 40),
        (typicalError, errors, confidence, df) => {
          const detectable = minimalDetectableChange(typicalError, confidence, df);
          const change = errors * typicalError;
          fc.pre(Math.abs(Math.abs(change) / detectable - 1) > 1e-6);
          const { reading } = changeScore({
            before: 100,
            after: 100 + change,
            typicalError,
            smallest: 0,
            confidence,
            df,
          });
          const real = change > 0 ? "real increase" : "real decrease";
          expect(reading).toBe(Math.abs(change) > detectable ? real : "within test error");
        },
      ),
    );
  });

  test("of nothing is no evidence: p 1, and an even chance", () => {
    const result = changeScore({ ...retest, after: 146 });
    expect(result).toMatchObject({ change: 0, percent: 0, ratio: 0, p: 1, chance: 0.5 });
  });

  test("from a score of 0 or less has no percent", () => {
    expect(reasonOf(changeScore({ ...retest, before: 0 }).percent)).toMatch(/above 0/);
    expect(reasonOf(changeScore({ ...retest, before: -3 }).percent)).toMatch(/above 0/);
    expect(changeScore({ ...retest, before: 0.5, after: 0.75 }).percent).toBe(0.5);
  });

  test("far beyond test error keeps a p above 0", () => {
    expect(changeScore({ ...retest, after: 146 + 30 * 7.556927 }).p).toBeGreaterThan(0);
  });

  test("cannot be judged by impossible figures", () => {
    expect(() => changeScore({ ...retest, typicalError: 0 })).toThrow(BadInput);
    expect(() => changeScore({ ...retest, smallest: -1 })).toThrow(BadInput);
    expect(() => changeScore({ ...retest, confidence: 95 })).toThrow(BadInput);
    expect(() => changeScore({ ...retest, df: -2 })).toThrow(BadInput);
  });

  test("is always numbers and reasons", () => {
    const any = fc.double({ min: -1e9, max: 1e9, noNaN: true });
    const size = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(any, any, size, size, (before, after, typicalError, df) => {
        const score = { before, after, typicalError, df, smallest: 0, confidence: 0.95 };
        expectNoNonsense(() => changeScore(score));
      }),
    );
  });
});

describe("the reading of an interval", () => {
  test.each([
    [2, 9, 1, "real increase"],
    [2, 9, 0, "real increase"],
    [-9, -2, 1, "real decrease"],
    [2, 9, 4, "real increase, perhaps too small to matter"],
    [-9, -2, 4, "real decrease, perhaps too small to matter"],
    [2, 9, 10, "real, too small to matter"],
    [-9, -2, 10, "real, too small to matter"],
    [-1, 9, 0, "within test error"],
    [-9, 1, 20, "within test error"],
    [0, 9, 0, "within test error"],
  ])("from %f to %f with a smallest of %f is: %4$s", (low, high, smallest, reading) => {
    expect(changeReading({ low, high }, smallest)).toBe(reading);
  });

  test("binary dust decides nothing: an end on 0 does not leave it out, an end on the smallest reaches it", () => {
    const [low, high] = [0.3 - 0.1 - 0.2, 0.6];
    expect(low).not.toBe(0);
    expect(changeReading({ low: Math.abs(low), high }, 0)).toBe("within test error");
    expect(0.1 + 0.2).not.toBe(0.3);
    expect(changeReading({ low: 0.3, high: 0.6 }, 0.1 + 0.2)).toBe("real increase");
    expect(changeReading({ low: 0.1, high: 0.1 + 0.2 }, 0.3)).toBe("real, too small to matter");
  });

  test("says the same of a decrease as of an increase of that size", () => {
    const size = fc.double({ min: 0, max: 20, noNaN: true });
    fc.assert(
      fc.property(size, size, size, (a, b, smallest) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const mirrored = changeReading({ low: -high, high: -low }, smallest);
        expect(mirrored.replace("decrease", "increase")).toBe(
          changeReading({ low, high }, smallest),
        );
      }),
    );
  });
});
