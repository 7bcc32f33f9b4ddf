import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NoAnswer } from "../../../src/core/problem";
import { reserveCheck } from "../../../src/core/reserve/reserveCheck";
import { spreadComponents } from "../../../src/core/reserve/spreadComponents";
import { squadReserveCheck } from "../../../src/core/reserve/squadReserveCheck";
import { standardDeviation } from "../../../src/core/statistics/moments";
import { elementAt } from "../../present";
import { readReference } from "../../reference/data";

/** Cardiac output by two methods, several pairs a subject: Bland and Altman 1999, Stat Methods Med Res 8:135-160. */
const output = readReference("data/cardiac-output") as Record<"subject" | "rv" | "ic", number[]>;
const bySubject = [...new Set(output.subject)].map((subject) =>
  output.rv.flatMap((rv, i) =>
    output.subject[i] === subject ? [rv - elementAt(output.ic, i)] : [],
  ),
);

describe("the published example with repeated pairs (Bland and Altman 2007)", () => {
  test("has the printed components: within 0.1707, between 0.8106", () => {
    const { within, between } = spreadComponents(bySubject);
    expect(within).toBeCloseTo(0.1707, 4);
    expect(between).toBeCloseTo(0.8106, 4);
  });

  test("has the printed SD, 0.990624, and the mean of the subjects' means, 0.7092", () => {
    const check = squadReserveCheck(bySubject, 0.95);
    expect(check.sd).toBeCloseTo(0.990624, 6);
    expect(check.bias).toBeCloseTo(0.7092, 4);
  });

  test("counts sets, and tests the bias on the 12 means (R 4.2.2, t.test)", () => {
    const check = squadReserveCheck(bySubject, 0.95);
    expect(check.n).toBe(60);
    expect(check.meanMiss).toBeCloseTo(0.8795, 8);
    expect(check.low).toBeCloseTo(0.102236501, 8);
    expect(check.high).toBeCloseTo(1.31623572, 7);
    expect(check.agreeLow).toBeCloseTo(-1.23238714, 7);
    expect(check.agreeHigh).toBeCloseTo(2.65085936, 7);
    expect(check.p).toBeCloseTo(0.0259718159, 9);
  });
});

test("lifters with equally many sets have the textbook components: MSB = within + m × between", () => {
  // Two lifters, two sets each: means 1 and 5, each set 1 off. MSW = 2, MSB = 16, m = 2.
  expect(
    spreadComponents([
      [0, 2],
      [4, 6],
    ]),
  ).toEqual({ within: 2, between: 7 });
});

test("lifters no more different than their own sets have no spread between them", () => {
  const alike = [
    [-3, 3],
    [-2, 2],
  ];
  expect(spreadComponents(alike).between).toBe(0);
  expect(squadReserveCheck(alike, 0.95).sd).toBeCloseTo(Math.sqrt(13), 12);
});

test("one set a lifter is the plain check", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -6, max: 6 }), { minLength: 2 }), (errors) => {
      const squad = squadReserveCheck(
        errors.map((error) => [error]),
        0.9,
      );
      expect(squad).toEqual(reserveCheck(errors, 0.9));
    }),
  );
});

test("the order of lifters and of their sets decides nothing", () => {
  const turned = [...bySubject].reverse().map((own) => [...own].reverse());
  const [one, other] = [squadReserveCheck(bySubject, 0.95), squadReserveCheck(turned, 0.95)];
  Object.values(one).forEach((value, at) => {
    expect(value).toBeCloseTo(elementAt(Object.values(other), at) as number, 10);
  });
});

test("a lifter with many sets does not outweigh the others in the bias", () => {
  const { bias, sd } = squadReserveCheck([[0], [3, 3, 3, 3, 3, 3, 3, 3, 3]], 0.95);
  expect(bias).toBe(1.5);
  expect(sd).toBeGreaterThan(standardDeviation([0, 3, 3, 3, 3, 3, 3, 3, 3, 3]));
});

test("one lifter says nothing of a squad's spread", () => {
  const { n, bias, sd, low, agreeLow, p } = squadReserveCheck([[1, 2, 3]], 0.95);
  expect([n, bias]).toEqual([3, 2]);
  [sd, low, agreeLow, p].forEach((value) => expect(value).toHaveProperty("absent"));
  expect(() => spreadComponents([[1, 2, 3]])).toThrow(NoAnswer);
});
