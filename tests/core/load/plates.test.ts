import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { barLoader, plateSets, type Plate } from "../../../src/core/load/plates";
import { NoAnswer } from "../../../src/core/problem";

const kilograms = barLoader(plateSets.kg);
const pounds = barLoader(plateSets.lb);
const own = (weights: readonly (number | readonly [number, number])[], bar = 20) =>
  barLoader({
    bar,
    plates: weights.map((plate) =>
      typeof plate === "number" ? { weight: plate } : { weight: plate[0], pairs: plate[1] },
    ),
  });

/** Every way to load one side, by counting through all numbers of pairs of each kind. */
function everyWay(plates: readonly Required<Pick<Plate, "weight" | "pairs">>[]): number[][] {
  return plates.reduce<number[][]>(
    (ways, { weight, pairs }) =>
      ways.flatMap((way) =>
        Array.from({ length: pairs + 1 }, (_, n) => [...way, ...Array<number>(n).fill(weight)]),
      ),
    [[]],
  );
}

const sum = (plates: readonly number[]) => plates.reduce((total, weight) => total + weight, 0);

/** Fewer plates first; of equally many, larger ones first. */
function better(a: readonly number[], b: readonly number[]): boolean {
  if (a.length !== b.length) return a.length < b.length;
  const place = a.findIndex((weight, i) => weight !== b[i]);
  return place >= 0 && a[place]! > b[place]!;
}

describe("plates for a load", () => {
  it("are those of the competition set, in kilograms (IWF rules; arithmetic)", () => {
    expect(kilograms(100)).toEqual([25, 15]);
    expect(kilograms(142.5)).toEqual([25, 25, 10, 1.25]);
    expect(kilograms(77.5)).toEqual([25, 2.5, 1.25]);
    expect(kilograms(20)).toEqual([]);
  });

  it("are those of the common set, in pounds (common practice; arithmetic)", () => {
    expect(pounds(135)).toEqual([45]);
    expect(pounds(245)).toEqual([45, 45, 10]);
    const one = [45, 35, 25, 10, 5, 2.5];
    expect(one.map((weight) => pounds(45 + 2 * weight))).toEqual(one.map((weight) => [weight]));
  });

  it("name the nearest loads where the load cannot be met, or are those below or above", () => {
    expect(() => kilograms(103)).toThrow(NoAnswer);
    expect(() => kilograms(103)).toThrow("the nearest are 102.5 below and 105 above");
    expect(kilograms(103, "below")).toEqual([25, 15, 1.25]);
    expect(kilograms(103, "above")).toEqual([25, 15, 2.5]);
    expect(() => kilograms(21)).toThrow("the nearest are 20 below and 22.5 above");
    expect(own([10])(35, "above")).toEqual([10]);
    expect(kilograms(100, "below")).toEqual([25, 15]);
    expect(kilograms(100, "above")).toEqual([25, 15]);
  });

  it("are the fewest, where the largest first takes more plates or fails", () => {
    expect(own([25, 20, 1.25])(100)).toEqual([20, 20]);
    expect(
      own([
        [25, 1],
        [15, 3],
        [10, 1],
      ])(110),
    ).toEqual([15, 15, 15]);
    expect(
      own([
        [25, 1],
        [20, 1],
        [10, 1],
      ])(80),
    ).toEqual([20, 10]);
  });

  it("are found where few of each must be used up", () => {
    const few = own(
      [
        [6, 1],
        [5, 3],
        [4, 1],
        [1, 1],
      ],
      0,
    );
    expect(few(38)).toEqual([5, 5, 5, 4]);
  });

  it("are the larger plates first where two ways take equally few", () => {
    // 30 a side: 20 + 10 or 15 + 15.
    expect(own([20, 15, 10])(80)).toEqual([20, 10]);
  });

  it("stay on the bar's side of what is there", () => {
    expect(() => kilograms(15)).toThrow("15 is lighter than the bar (20)");
    expect(() => kilograms(15, "below")).toThrow("15 is lighter than the bar (20)");
    expect(kilograms(15, "above")).toEqual([]);
    const few = own([
      [25, 1],
      [20, 1],
      [10, 1],
    ]);
    expect(few(130)).toEqual([25, 20, 10]);
    expect(() => few(1e12)).toThrow("more than these plates make; the heaviest is 130");
    expect(() => few(1e12, "above")).toThrow("the heaviest is 130");
    expect(few(1e12, "below")).toEqual([25, 20, 10]);
    expect(own([[25, 0]])(20)).toEqual([]);
    expect(() => own([[25, 0]])(70)).toThrow("the heaviest is 20");
  });

  it("do not mind binary fractions, nor plates of a tenth or of two and a half pounds", () => {
    expect(own([0.1, 0.2])(20.6)).toEqual([0.2, 0.1]);
    expect(
      own(
        [
          [0.3, 1],
          [0.1, 1],
        ],
        0,
      )(0.8),
    ).toEqual([0.3, 0.1]);
    expect(own([10, 1.134])(44.536)).toEqual([10, 1.134, 1.134]);
    const perPound = 2.2046226218;
    const converted = own([45, 35, 25, 10, 5, 2.5].map((weight) => weight / perPound));
    const load = 20 + (2 * (45 + 35 + 2.5)) / perPound;
    expect(converted(load)).toEqual([45 / perPound, 35 / perPound, 2.5 / perPound]);
    expect(kilograms(20.0000000000001)).toEqual([]);
  });

  it("are what a search through every way finds, and so are the nearest loads", () => {
    const plates = fc.uniqueArray(
      fc.record({
        weight: fc.constantFrom(25, 20, 15, 10, 5, 2.5, 1.25, 1.134, 0.5, 0.1),
        pairs: fc.integer({ min: 0, max: 3 }),
      }),
      { selector: ({ weight }) => weight, minLength: 1, maxLength: 5 },
    );
    const hundredths = fc.integer({ min: 1, max: 9000 }).map((n) => n / 50);
    fc.assert(
      fc.property(plates, hundredths, fc.constantFrom(0, 15, 20), (given, any, bar) => {
        const largestFirst = [...given].sort((a, b) => b.weight - a.weight);
        const ways = everyWay(largestFirst).map((way) => ({ way, load: bar + 2 * sum(way) }));
        const load = barLoader({ bar, plates: given });
        const bestFor = (goal: number) =>
          ways
            .filter((way) => Math.abs(way.load - goal) < 1e-6)
            .map(({ way }) => way)
            .reduce((best, way) => (better(way, best) ? way : best));
        for (const goal of [any, ways.at(-1)!.load, ways[Math.floor(ways.length / 2)]!.load]) {
          if (goal === 0) continue;
          const below = ways.filter((way) => way.load < goal + 1e-6).map((way) => way.load);
          const above = ways.filter((way) => way.load > goal - 1e-6).map((way) => way.load);
          const lower = Math.max(...below);
          const upper = Math.min(...above);
          if (Math.abs(lower - goal) < 1e-6) expect(load(goal)).toEqual(bestFor(goal));
          else expect(() => load(goal)).toThrow(NoAnswer);
          if (below.length > 0) expect(load(goal, "below")).toEqual(bestFor(lower));
          else expect(() => load(goal, "below")).toThrow("lighter than the bar");
          if (above.length > 0) expect(load(goal, "above")).toEqual(bestFor(upper));
          else expect(() => load(goal, "above")).toThrow("more than these plates make");
        }
      }),
      { numRuns: 300 },
    );
  });

  it("do not depend on the loads asked before", () => {
    const loads = fc.array(fc.integer({ min: 8, max: 200 }).map((n) => n * 2.5));
    fc.assert(
      fc.property(loads, (all) => {
        const once = barLoader(plateSets.kg);
        expect(all.map((load) => once(load))).toEqual(
          all.map((load) => barLoader(plateSets.kg)(load)),
        );
      }),
    );
  });

  it("come at once for a bar of a ton, and for a column of loads", () => {
    const started = performance.now();
    expect(sum(own([25, 20, 15, 10, 5, 2.5, 1.25, 1.134])(1000))).toBe(490);
    for (let row = 0; row < 50_000; row++) kilograms(20 + 2.5 * (row % 120));
    expect(performance.now() - started).toBeLessThan(2000);
  });

  it("refuse what cannot be searched rather than go on", () => {
    expect(() => kilograms(1e9)).toThrow("load is 1000000000, too many steps of 2.5 to search");
    expect(() => own([25, 0.0001])(500)).toThrow("plates with fewer decimals");
    expect(() => own([25, 1e-8])(100)).toThrow("plates of 1e-8 and 25 share no common step");
  });

  it("are at most a thousand a side", () => {
    expect(own([[25, 1], 1.25])(2567.5)).toHaveLength(1000);
    expect(() => own([[25, 1], 1.25])(2570)).toThrow(
      "the load takes 1001 plates a side; expected at most 1000",
    );
    expect(() => own([[25, 1], 1.25])(3820)).toThrow("the load takes 1501 plates a side");
    expect(own([[25, 1000]])(70)).toEqual([25]);
    expect(() => own([[25, 1001]])).toThrow(
      "pairs is 1001; expected a whole number from 0 to 1000",
    );
  });

  it("name the row of the plates that cannot be right", () => {
    expect(() => own([25, -5])).toThrow("row 2 of the plates: weight is -5; expected above 0");
    expect(() => own([[25, 1.5]])).toThrow("row 1 of the plates: pairs is 1.5");
    expect(() => barLoader({ bar: 20, plates: [{ weight: 0, row: 7 }] })).toThrow(
      "row 7 of the plates: weight is 0",
    );
    expect(() => own([])).toThrow("there are no plates");
    expect(() => own([25], -1)).toThrow("bar is -1; expected at least 0");
    expect(() => kilograms(-5)).toThrow("load is -5; expected above 0");
  });
});
