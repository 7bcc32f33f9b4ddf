import { describe, expect, test } from "vitest";
import { BadInput } from "../../../src/core/problem";
import { callError } from "../../../src/core/reserve/callError";
import { reserveCheck } from "../../../src/core/reserve/reserveCheck";
import { elementAt } from "../../present";
import { readReference } from "../../reference/data";

describe("the error of a call", () => {
  test("is what was left at the call less what was called: above 0 there was more", () => {
    expect(callError(6, 2, 11)).toBe(3);
    expect(callError(6, 4, 8)).toBe(-2);
  });

  test("can be called at the last rep, with none or some left", () => {
    expect(callError(8, 0, 8)).toBe(0);
    expect(callError(8, 1, 8)).toBe(-1);
  });

  test("is refused where the set ended before the call", () => {
    expect(() => callError(8, 1, 7)).toThrow(
      new BadInput(
        "repsToFailure is 7, fewer than the 8 reps at the call; expected all reps of the set",
      ),
    );
  });

  test("carries no binary dust", () => {
    expect(callError(5, 0.1, 5.3)).toBe(0.2);
  });
});

/** Peak flow of 17 people by two meters, Bland and Altman 1986, Lancet i:307-310. */
const flow = readReference("data/peak-flow") as { wright1: number[]; mini1: number[] };
const differences = flow.wright1.map((value, i) => value - elementAt(flow.mini1, i));

describe("calls that each stand for themselves", () => {
  const check = reserveCheck(differences, 0.95);

  test("have the printed bias and SD of Bland and Altman 1986: −2.1 and 38.8", () => {
    expect(check.n).toBe(17);
    expect(check.bias).toBeCloseTo(-2.1, 1);
    expect(check.sd).toBeCloseTo(38.8, 1);
  });

  test("have the interval and p of a one-sample t test (R 4.2.2, t.test)", () => {
    expect(check.low).toBeCloseTo(-22.0488377, 6);
    expect(check.high).toBeCloseTo(17.8135436, 6);
    expect(check.p).toBeCloseTo(0.824647674, 8);
    expect(check.meanMiss).toBeCloseTo(28.9411765, 6);
  });

  test("have limits of agreement 1.96 SD either side of the bias", () => {
    expect(check.agreeLow).toBeCloseTo(-78.0973016, 6);
    expect(check.agreeHigh).toBeCloseTo(73.8620075, 6);
  });

  test("widen the interval of the bias with the confidence, and leave the limits", () => {
    const surer = reserveCheck(differences, 0.99);
    expect(surer.low).toBeLessThan(check.low as number);
    expect(surer.agreeLow).toBe(check.agreeLow);
  });
});

test("a single call has a bias and a miss, and says why it has no spread", () => {
  expect(reserveCheck([-2], 0.95)).toMatchObject({
    n: 1,
    bias: -2,
    meanMiss: 2,
    sd: { absent: "a single value has no spread" },
    low: { absent: "a single value has no spread" },
    agreeHigh: { absent: "a single value has no spread" },
  });
});

test("calls that are all off by the same have limits of agreement, but nothing to test by", () => {
  const { sd, agreeLow, agreeHigh, p } = reserveCheck([1, 1, 1], 0.95);
  expect([sd, agreeLow, agreeHigh]).toEqual([0, 1, 1]);
  expect(p).toHaveProperty("absent");
});
