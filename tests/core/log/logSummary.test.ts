import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { summariseLog, type SummarisedSets } from "../../../src/core/log/logSummary";
import { equations } from "../../../src/core/strength/equations";
import { elementAt, only } from "../../present";
import { independentSummary, rowsOf } from "./independentSummary";
import { randomLog } from "./randomLog";

const USUAL = { within: 4, maxReps: 10, equation: equations.epley };

function summaryOf(log: Partial<SummarisedSets>, options: Partial<typeof USUAL> = {}) {
  const blank = (log.reps ?? []).map(() => null);
  const whole = { load: blank, reps: [], reserve: blank, sets: undefined, ...log };
  return only(summariseLog(whole, () => 0, 1, { ...USUAL, ...options }));
}

test("every measure by key equals what a general-purpose data library makes of the definitions", () => {
  fc.assert(
    fc.property(
      randomLog,
      fc.integer({ min: 0, max: 6 }),
      fc.integer({ min: 1, max: 15 }),
      ({ keys, ...columns }, within, maxReps) => {
        const expected = rowsOf(independentSummary({ keys, ...columns }, { within, maxReps }));
        const places = new Map(expected.map(([lifter, week], at) => [`${lifter} ${week}`, at]));
        const summaries = summariseLog(
          columns,
          (row) => places.get(`${keys.lifter[row]} ${keys.week[row]}`)!,
          expected.length,
          { within, maxReps, equation: equations.epley },
        );
        summaries.forEach((summary, group) => {
          const [, , ...measures] = elementAt(expected, group);
          Object.values(summary).forEach((value: unknown, measure) => {
            if (typeof value === "number")
              expect(value).toBeCloseTo(measures[measure] as number, 9);
            else expect(measures[measure]).toBe("");
          });
        });
      },
    ),
  );
});

describe("a set without a load", () => {
  const summary = summaryOf({ reps: [8, 5], load: [null, 100], reserve: [1, 3], sets: [3, 2] });

  test("still counts as sets, reps, close sets and in the mean reserve", () => {
    expect(summary).toMatchObject({ sets: 5, reps: 34, closeSets: 5, meanReserve: 9 / 5 });
  });

  test("adds nothing to volume load, and the summary says how many there were", () => {
    expect(summary).toMatchObject({ volumeLoad: 1000, topLoad: 100, setsWithoutLoad: 3 });
  });
});

describe("a set without a reserve", () => {
  const summary = summaryOf({
    reps: [5, 5, 5],
    load: [140, 100, 100],
    reserve: [null, 2, 0],
    sets: [4, 1, 1],
  });

  test("is no close set, is not in the mean, and has no e1RM, however heavy", () => {
    expect(summary).toMatchObject({ closeSets: 2, meanReserve: 1, topLoad: 140 });
    // Epley 1985: 100 x (1 + 7/30).
    expect(summary.bestE1rm).toBeCloseTo(370 / 3, 9);
  });

  test("is counted together with sets at reserve 0, which desktop Excel cannot tell from it", () => {
    expect(summary.setsAtReserve0OrBlank).toBe(5);
  });
});

describe("the best e1RM", () => {
  const e1rmOf = (reps: number, reserve: number, options: Partial<typeof USUAL> = {}) =>
    summaryOf({ reps: [reps], load: [100], reserve: [reserve] }, options).bestE1rm;
  const none = { absent: expect.stringContaining("no set has") as string };

  test("is taken from sets of at most maxReps to failure, that many included", () => {
    expect(e1rmOf(8, 2)).toBeCloseTo(400 / 3, 9);
    expect(e1rmOf(8, 2.5)).toEqual(none);
    expect(e1rmOf(8, 2.5, { maxReps: 12 })).toBeCloseTo(135, 9);
  });

  test("leaves out what the equation does not reach, and does not refuse the log for it", () => {
    const options = { maxReps: 25, equation: equations.brzycki };
    expect(e1rmOf(16, 0, options)).toEqual(none);
    // Brzycki 1993: 100 x 36 / (37 - 15).
    expect(e1rmOf(15, 0, options)).toBeCloseTo(3600 / 22, 9);
    expect(e1rmOf(0.5, 0)).toEqual(none);
  });
});

test("what no set can tell does not exist: mean reserve, top load, best e1RM", () => {
  const { meanReserve, topLoad, bestE1rm } = summaryOf({ reps: [5] });
  expect([meanReserve, topLoad, bestE1rm].map((value) => typeof value)).toEqual(
    Array(3).fill("object"),
  );
});

test("without a reserve column every set is to failure", () => {
  const summary = summaryOf({ reps: [5, 6], load: [100, 90], reserve: undefined });
  expect(summary).toMatchObject({ closeSets: 2, meanReserve: 0, setsAtReserve0OrBlank: 2 });
  // Epley 1985: 100 x (1 + 5/30).
  expect(summary.bestE1rm).toBeCloseTo(350 / 3, 9);
});
