import { describe, expect, test } from "vitest";
import { sessionLoad } from "../../../src/core/log/sessionLoad";
import { weekMonotony, weekStrain } from "../../../src/core/log/weekLoad";
import { BadInput, NoAnswer } from "../../../src/core/problem";

describe("session load", () => {
  test("is RPE times minutes (Foster et al. 2001)", () => {
    expect(sessionLoad(7, 60)).toBe(420);
  });

  test("needs both", () => {
    expect(() => sessionLoad(0, 60)).toThrow(BadInput);
    expect(() => sessionLoad(7, -1)).toThrow(BadInput);
  });
});

describe("monotony and strain of a week (Foster 1998)", () => {
  // Invented loads; R 4.2.2: mean(x) / sd(x) and sum(x) * mean(x) / sd(x).
  const week = [300, 450, 0, 600, 200, 500, 0];

  test("are the mean over the n − 1 standard deviation, and that times the total", () => {
    expect(weekMonotony(week)).toBeCloseTo(1.22638748, 8);
    expect(weekStrain(week)).toBeCloseTo(2514.09433, 5);
  });

  test("do not depend on the order of the days", () => {
    expect(weekMonotony([...week].reverse())).toBeCloseTo(weekMonotony(week), 12);
  });

  test("monotony has no unit, strain has the unit of the loads", () => {
    const tenfold = week.map((load) => 10 * load);
    expect(weekMonotony(tenfold)).toBeCloseTo(weekMonotony(week), 12);
    expect(weekStrain(tenfold)).toBeCloseTo(10 * weekStrain(week), 6);
  });

  test("do not exist where every day is the same, binary dust aside", () => {
    expect(() => weekMonotony([0.1 + 0.2, 0.3, 0.3])).toThrow(NoAnswer);
    expect(() => weekStrain([0, 0, 0])).toThrow(NoAnswer);
  });

  test("do not exist for fewer than 2 days", () => {
    expect(() => weekMonotony([300])).toThrow("at least 2 days");
  });
});
