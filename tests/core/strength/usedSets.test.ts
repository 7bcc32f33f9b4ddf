import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { equations } from "../../../src/core/strength/equations";
import {
  requireDays,
  usedSets,
  type LoggedSet,
  type TrendOptions,
} from "../../../src/core/strength/trend/usedSets";

const { epley, brzycki } = equations;
const set = (load: number, reps: number, reserve: number, date = 1): LoggedSet => ({
  date,
  load,
  reps,
  reserve,
});
const used = (sets: readonly LoggedSet[], options: Partial<TrendOptions> = {}) =>
  usedSets(sets, { equation: epley, ...options }).sets.map(({ load, reps }) => `${load} x ${reps}`);

describe("the sets that a trend counts", () => {
  it("leave out a set without reserve that another set of its day beats", () => {
    // The warm-up of 60 was written as 0, and the second set of 100 was tired.
    expect(used([set(60, 5, 0), set(100, 8, 1), set(100, 6, 0)])).toEqual(["100 x 8"]);
    // Heavier with fewer reps, or lighter with more, is no better.
    expect(used([set(90, 10, 0), set(100, 8, 0)])).toEqual(["90 x 10", "100 x 8"]);
    // What has a reserve is what it says it is.
    expect(used([set(60, 5, 3), set(100, 8, 1)])).toEqual(["60 x 5", "100 x 8"]);
  });

  it("keep equal sets, binary dust aside, and sets of another day", () => {
    expect(used([set(100, 5, 0), set(100, 5, 0)])).toHaveLength(2);
    expect(
      used([set(82.5, 5, 0), set(0.75 * 110, 5, 0), set(3 * 27.5 + 1e-12, 5, 0)]),
    ).toHaveLength(3);
    // From ten digits on it is dust.
    expect(used([set(82.5, 5, 0), set(82.5 + 3e-9, 5, 0)])).toHaveLength(2);
    expect(used([set(60, 5, 0, 1), set(100, 8, 1, 2)])).toHaveLength(2);
    // A time of day makes no other day.
    expect(used([set(60, 5, 0, 1.25), set(100, 8, 1, 1.75)])).toEqual(["100 x 8"]);
  });

  it("are beaten by sets that do not count themselves", () => {
    expect(used([set(60, 13, 0), set(60, 12, 0)])).toEqual([]);
    expect(used([set(60, 13, 0), set(60, 12, 0)], { maxReps: 13 })).toEqual(["60 x 13"]);
  });

  it("are those that comparing each set with each leaves", () => {
    const anySet = fc.record({
      date: fc.integer({ min: 1, max: 2 }),
      load: fc.constantFrom(50, 60, 70),
      reps: fc.integer({ min: 1, max: 4 }),
      reserve: fc.constantFrom(0, 0, 1),
    });
    fc.assert(
      fc.property(fc.array(anySet, { maxLength: 12 }), (sets) => {
        const left = sets.filter(
          (one) =>
            one.reserve > 0 ||
            !sets.some(
              (other) =>
                other.date === one.date &&
                other.load >= one.load &&
                other.reps >= one.reps &&
                other.load + other.reps > one.load + one.reps,
            ),
        );
        expect(usedSets(sets, { equation: epley }).sets).toEqual(left);
      }),
    );
  });

  it("leave out many reps by the reps done, not by the call", () => {
    expect(used([set(60, 12, 4), set(55, 13, 1)])).toEqual(["60 x 12"]);
    expect(used([set(60, 8, 4), set(70, 5, 4)], { maxReps: 6 })).toEqual(["70 x 5"]);
  });

  it("leave out what the equation does not reach, the bias counted in, without an error", () => {
    expect(used([set(60, 12, 4), set(70, 12, 3)], { equation: brzycki })).toEqual(["70 x 12"]);
    expect(used([set(70, 12, 3)], { equation: brzycki, reserveBias: 0.5 })).toEqual([]);
    expect(used([set(70, 12, 3.5)], { equation: brzycki, reserveBias: -0.5 })).toHaveLength(1);
    expect(used([set(70, 12, 2.7)], { equation: brzycki, reserveBias: 0.1 + 0.2 })).toHaveLength(1);
  });

  it("come with their days in order, each once, and with how many were left out", () => {
    const { days, leftOut } = usedSets(
      [set(100, 5, 1, 9.5), set(100, 5, 1, 3), set(100, 5, 2, 9.1), set(50, 20, 1, 4)],
      { equation: epley },
    );
    expect(days).toEqual([3, 9]);
    expect(leftOut).toBe(1);
  });

  it("are too few under 3 days, and the message says what was left out", () => {
    const sets = [set(100, 5, 1, 1), set(100, 5, 1, 1.5), set(100, 5, 1, 5)];
    const require = (all: LoggedSet[]) => () => requireDays(usedSets(all, { equation: epley }));
    expect(require(sets)).toThrow(/^a trend takes sets of at least 3 days; found 2$/);
    expect(require([...sets, set(40, 20, 0, 9)])).toThrow(
      "found 2 (sets that do not count, left out: 1)",
    );
    expect(require([])).toThrow("found 0");
    expect(require([...sets, set(100, 5, 1, 9)])).not.toThrow();
  });

  it("name the row that cannot be right", () => {
    const third = (change: Partial<LoggedSet>) => () =>
      used([set(100, 5, 1), set(100, 5, 1), { ...set(100, 5, 1), ...change }]);
    expect(third({ load: -5 })).toThrow("row 3: load is -5; expected above 0");
    expect(third({ reps: 0, row: 40 })).toThrow("row 40: reps is 0; expected at least 1");
    expect(third({ reserve: -1 })).toThrow("row 3: reserve is -1; expected at least 0");
  });

  it("are found in fifty thousand sets of one day", () => {
    const many = Array.from({ length: 50_000 }, (_, i) => set(100 + i, 1 + ((i * 7) % 12), 0));
    const started = performance.now();
    usedSets(many, { equation: epley });
    expect(performance.now() - started).toBeLessThan(2000);
  });
});
