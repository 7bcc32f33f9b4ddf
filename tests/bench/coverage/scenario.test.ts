import { describe, expect, it } from "vitest";
import { drawsFor } from "./draws";
import { measure, outside, type Family, type Scenario } from "./scenario";
import { rowsIn, rowsOf, withTable } from "./tables";

/** An interval that holds in a share of all runs. */
const holding = (share: number): Scenario => ({
  function: "MDC",
  event: "interval holds the truth",
  truth: `a coin that falls right in ${share}`,
  case: "good",
  promised: "95%",
  band: [0.93, 0.97],
  run: (draws) => draws.uniform() < share,
});

describe("the coverage runner", () => {
  it("passes what is promised and catches what falls short, in a short run", () => {
    expect(outside(holding(0.95), measure(holding(0.95), 300))).toBe(false);
    for (const share of [0, 0.19, 0.61, 0.8, 1]) {
      expect(outside(holding(share), measure(holding(share), 300)), `${share}`).toBe(true);
    }
    expect(outside(holding(0.875), measure(holding(0.875), 2000))).toBe(true);
  });

  it("counts answers, several a run or none, and judges chance by whole runs", () => {
    const pairs = { ...holding(0.5), run: () => [true, false] };
    expect(measure(pairs, 10)).toEqual({ share: 0.5, count: 20, standardError: 0 });
    let run = 0;
    const squads = { ...holding(0.5), run: () => (run++ % 2 ? [true, true] : [false, false]) };
    expect(measure(squads, 100).standardError).toBeCloseTo(0.05, 12);
    const never = { ...holding(0.5), run: () => [] };
    expect(outside(never, measure(never, 10))).toBe(true);
  });

  it("draws the same numbers for a name every time, and others for another", () => {
    const numbers = (name: string) => {
      const draws = drawsFor(name);
      return draws.times(3, draws.uniform);
    };
    expect(numbers("a")).toEqual(numbers("a"));
    expect(numbers("a")).not.toEqual(numbers("b"));
  });

  it("draws normal, chi-square and whole numbers of the right mean and spread", () => {
    const draws = drawsFor("moments");
    const moments = (values: number[]) => {
      const mean = values.reduce((a, b) => a + b) / values.length;
      return { mean, variance: values.reduce((a, b) => a + (b - mean) ** 2, 0) / values.length };
    };
    const normal = moments(draws.times(40_000, () => draws.normal(5, 2)));
    expect(Math.abs(normal.mean - 5)).toBeLessThan(0.05);
    expect(Math.abs(normal.variance - 4)).toBeLessThan(0.15);
    for (const df of [1, 4, 30]) {
      const chiSquare = moments(draws.times(40_000, () => draws.chiSquare(df)));
      expect(Math.abs(chiSquare.mean / df - 1)).toBeLessThan(0.04);
      expect(Math.abs(chiSquare.variance / (2 * df) - 1)).toBeLessThan(0.1);
    }
    const whole = draws.times(5000, () => draws.whole(3, 8));
    expect(new Set(whole)).toEqual(new Set([3, 4, 5, 6, 7, 8]));
  });

  it("writes a family's table between its marks and keeps the rows it did not measure", () => {
    const family: Family = { name: "coins", scenarios: [holding(0.95), holding(0.5)] };
    const document = "before\n\n<!-- coverage: coins -->\n<!-- /coverage -->\n\nafter\n";
    const once = withTable(document, family, () => measure(holding(1), 10));
    expect(rowsIn(once, family)).toEqual(rowsOf(family));
    expect(once.match(/100\.0%/g)).toHaveLength(2);
    const twice = withTable(once, family, (scenario) =>
      scenario === family.scenarios[0] ? measure(holding(0), 10) : undefined,
    );
    expect(twice.match(/100\.0%/g)).toHaveLength(1);
    expect(twice.match(/ 0\.0%/g)).toHaveLength(1);
    expect(twice.startsWith("before\n") && twice.endsWith("after\n")).toBe(true);
    expect(() => withTable("nothing", family, () => undefined)).toThrow("coverage: coins");
  });
});
