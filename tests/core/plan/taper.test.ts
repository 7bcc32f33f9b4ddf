import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { reserveInWeek, reserveTaper } from "../../../src/core/plan/taper";

describe("a reserve taper", () => {
  it("goes straight from the first week to the last, in whole reps unless another step is given", () => {
    expect(reserveTaper({ weeks: 4, from: 3, to: 0 })).toEqual([3, 2, 1, 0]);
    expect(reserveTaper({ weeks: 5, from: 3, to: 1, step: 0 })).toEqual([3, 2.5, 2, 1.5, 1]);
    expect(reserveTaper({ weeks: 5, from: 3, to: 0, step: 0.5 })).toEqual([3, 2.5, 1.5, 1, 0]);
  });

  it("rounds a tie up, the cautious side", () => {
    expect(reserveTaper({ weeks: 6, from: 3, to: 0.5 })).toEqual([3, 3, 2, 2, 1, 1]);
    expect(reserveTaper({ weeks: 3, from: 0, to: 3 })).toEqual([0, 2, 3]);
  });

  it("takes the last value where it has one week", () => {
    expect(reserveTaper({ weeks: 1, from: 3, to: 1 })).toEqual([1]);
  });

  it("gives one week alone, and shows how to repeat blocks past the last", () => {
    const taper = { weeks: 6, from: 3, to: 0.5 };
    expect(reserveInWeek(taper, 4)).toBe(2);
    expect(() => reserveInWeek(taper, 7)).toThrow(
      "week is 7; expected a week of the taper, 1 to 6",
    );
    expect(() => reserveInWeek(taper, 7)).toThrow("MOD(week - 1, 6) + 1");
    expect(() => reserveInWeek(taper, 0)).toThrow("expected a whole number from 1 to 6");
    expect(() => reserveInWeek(taper, 1.5)).toThrow("week is 1.5");
  });

  it("begins and ends where it is told, never turns back and keeps to its step", () => {
    const halves = fc.integer({ min: 0, max: 20 }).map((n) => n / 2);
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 52 }),
        halves,
        halves,
        fc.constantFrom(0, 0.1, 0.5),
        (weeks, from, to, step) => {
          const taper = { weeks, from, to, step };
          const reserves = reserveTaper(taper);
          expect(reserves).toHaveLength(weeks);
          expect(reserves[0]).toBe(from);
          expect(reserves.at(-1)).toBe(to);
          reserves.forEach((reserve, i) => {
            expect(reserve).toBe(reserveInWeek(taper, i + 1));
            const before = reserves[i - 1] ?? from;
            expect((reserve - before) * (to - from)).toBeGreaterThanOrEqual(0);
            const straight = from + ((to - from) * i) / (weeks - 1);
            expect(Math.abs(reserve - straight)).toBeLessThanOrEqual(step / 2 + 1e-9);
            if (step > 0) {
              const steps = reserve / step;
              expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-9);
            }
          });
        },
      ),
    );
  });

  it("refuses weeks, reserves and steps that cannot be right", () => {
    const taper = { weeks: 4, from: 3, to: 0 };
    expect(() => reserveTaper({ ...taper, weeks: 2.5 })).toThrow("weeks is 2.5; expected a whole");
    expect(() => reserveTaper({ ...taper, weeks: 1e9 })).toThrow("from 1 to 520");
    expect(() => reserveTaper({ ...taper, from: -1 })).toThrow("the reserve of week 1 is -1");
    expect(() => reserveTaper({ ...taper, to: -1 })).toThrow("the reserve of the last week is -1");
    expect(() => reserveTaper({ ...taper, step: -1 })).toThrow("step is -1");
  });
});
