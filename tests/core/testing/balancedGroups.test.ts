import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BadInput } from "../../../src/core/problem";
import { mean } from "../../../src/core/statistics/moments";
import { seededRandom, shuffled } from "../../../src/core/statistics/seededRandom";
import { balancedGroups } from "../../../src/core/testing/balancedGroups";

const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
const squad = fc.array(fc.integer({ min: 40, max: 200 }), { minLength: 2, maxLength: 60 });
const groupCount = fc.integer({ min: 2, max: 6 });
const seed = fc.integer();
const single = (scores: number[]) => scores.map((score) => [score]);

function sizesOf(split: string[], groups: number): number[] {
  return [...letters.slice(0, groups)].map(
    (letter) => split.filter((other) => other === letter).length,
  );
}

test("everybody has a letter, and group sizes differ by one at most, whatever the strata", () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 40, max: 200 }), fc.constantFrom("w", "m", "u19")), {
        minLength: 1,
        maxLength: 60,
      }),
      groupCount,
      seed,
      (athletes, groups, dice) => {
        const split = balancedGroups(
          athletes.map(([score]) => [score]),
          groups,
          athletes.map(([, stratum]) => stratum),
          dice,
        );
        const sizes = sizesOf(split, groups);
        expect(sizes.reduce((a, b) => a + b)).toBe(athletes.length);
        expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
      },
    ),
  );
});

test("within each stratum every full run of the ranking holds each letter once", () => {
  fc.assert(
    fc.property(squad, groupCount, seed, (scores, groups, dice) => {
      const strata = scores.map((_, i) => (i % 3 === 0 ? "juniors" : "seniors"));
      const split = balancedGroups(single(scores), groups, strata, dice);
      for (const stratum of ["juniors", "seniors"]) {
        const ranked = scores
          .map((score, i) => ({ score, letter: split[i]!, stratum: strata[i] }))
          .filter((athlete) => athlete.stratum === stratum)
          .sort((a, b) => b.score - a.score);
        for (let start = 0; start + groups <= ranked.length; start += groups) {
          const run = ranked.slice(start, start + groups).map(({ letter }) => letter);
          expect(new Set(run).size).toBe(groups);
        }
      }
    }),
  );
});

test("group means differ by no more than the range of scores over the number of runs", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 12 }), groupCount, seed, (runs, groups, dice) => {
      const random = seededRandom(dice);
      const scores = Array.from({ length: runs * groups }, () => 50 + 100 * random());
      const split = balancedGroups(single(scores), groups, undefined, dice);
      const means = [...letters.slice(0, groups)].map((letter) =>
        mean(scores.filter((_, i) => split[i] === letter)),
      );
      const range = Math.max(...scores) - Math.min(...scores);
      expect(Math.max(...means) - Math.min(...means)).toBeLessThanOrEqual(range / runs + 1e-9);
    }),
  );
});

test("the same seed gives the same split, and other seeds give others", () => {
  const scores = single([120, 110, 105, 98, 95, 92, 90, 85, 80, 76]);
  const splits = Array.from({ length: 40 }, (_, dice) =>
    balancedGroups(scores, 2, undefined, dice).join(""),
  );
  expect(splits).toEqual(
    splits.map((_, dice) => balancedGroups(scores, 2, undefined, dice).join("")),
  );
  expect(new Set(splits).size).toBeGreaterThan(15);
});

test("no letter has a claim to the best athletes", () => {
  const scores = single([120, 110, 105, 98]);
  const best = Array.from(
    { length: 2000 },
    (_, dice) => balancedGroups(scores, 2, undefined, dice)[0],
  );
  const share = best.filter((letter) => letter === "A").length / best.length;
  expect(Math.abs(share - 0.5)).toBeLessThan(0.05);
});

test("several scores count by their z-scores, so that no unit outweighs the others", () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 1, max: 99 })), {
        minLength: 4,
        maxLength: 30,
      }),
      seed,
      (rows, dice) => {
        const grams = rows.map(([press, row]) => [press, 1024 * row]);
        expect(balancedGroups(rows, 2, undefined, dice)).toEqual(
          balancedGroups(grams, 2, undefined, dice),
        );
        const padded = rows.map(([press]) => [press, 7]);
        expect(balancedGroups(padded, 2, undefined, dice)).toEqual(
          balancedGroups(single(rows.map(([press]) => press)), 2, undefined, dice),
        );
      },
    ),
  );
});

test("a seed is a whole number, of any sign", () => {
  for (const seed of [1.5, NaN, Infinity, 2 ** 53]) {
    expect(() => balancedGroups([[1], [2]], 2, undefined, seed)).toThrow(BadInput);
  }
  expect(balancedGroups([[1], [2]], 2, undefined, -7)).toHaveLength(2);
});

test("two to 26 groups", () => {
  expect(() => balancedGroups([[1], [2]], 1, undefined, 1)).toThrow(BadInput);
  expect(() => balancedGroups([[1], [2]], 27, undefined, 1)).toThrow(BadInput);
  expect(() => balancedGroups([[1], [2]], 2.5, undefined, 1)).toThrow(BadInput);
  expect(balancedGroups([], 2, undefined, 1)).toEqual([]);
  expect(new Set(balancedGroups([[1], [2], [3]], 5, undefined, 1)).size).toBe(3);
});

describe("the seeded stream", () => {
  test("is the published generator, mulberry32, so that a split can be shown again years later", () => {
    const random = seededRandom(0);
    expect([random(), random()]).toEqual([0.26642920868471265, 0.0003297457005828619]);
  });

  test("is spread evenly", () => {
    const random = seededRandom(12);
    const bins = new Array<number>(10).fill(0);
    for (let i = 0; i < 20_000; i++) bins[Math.floor(random() * 10)]! += 1;
    for (const count of bins) expect(Math.abs(count - 2000)).toBeLessThan(200);
  });

  test("shuffles to every order about equally often, losing nothing", () => {
    const random = seededRandom(5);
    const orders = new Map<string, number>();
    for (let i = 0; i < 12_000; i++) {
      const order = shuffled(["a", "b", "c"], random).join("");
      orders.set(order, (orders.get(order) ?? 0) + 1);
    }
    expect(orders.size).toBe(6);
    for (const count of orders.values()) expect(Math.abs(count - 2000)).toBeLessThan(200);
  });
});
