import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BadInput, NoAnswer } from "../../../src/core/problem";
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

  test("has the values of R 4.2.2 (pnorm)", () => {
    const result = changeScore(retest);
    expectAllNear(result, {
      change: 24,
      percent: 0.164383562,
      ratio: 2.24569627,
      p: 0.0247234695,
      chance: 0.987638265,
    });
    expect(result.reading).toBe("real increase");
  });

  test("is within test error where test error alone often goes as far (R 4.2.2)", () => {
    const result = changeScore({ ...retest, after: 160 });
    expectAllNear(result, { change: 14, p: 0.190199392, chance: 0.904900304 });
    expect(result.reading).toBe("within test error");
  });

  test("may be real and still too small to matter (R 4.2.2)", () => {
    const result = changeScore({ ...retest, smallest: 30 });
    expectAllNear(result, { p: 0.0247234695, chance: 0.287254241 });
    expect(result.reading).toBe("real, too small to matter");
  });

  test("is judged by t where the typical error comes from few athletes (R 4.2.2, pt)", () => {
    const result = changeScore({ ...retest, smallest: 5, df: 7 });
    expectAllNear(result, { ratio: 2.24569627, p: 0.0595751376, chance: 0.940665735 });
    expect(result.reading).toBe("within test error");
  });

  test("that reaches the smallest that matters exactly does matter", () => {
    const score = { before: 10.3, after: 10.6, typicalError: 0.01, confidence: 0.95 };
    expect(changeScore({ ...score, smallest: 0.3 }).reading).toBe("real increase");
    expect(changeScore({ ...score, smallest: 0.31 }).reading).toBe("real, too small to matter");
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
