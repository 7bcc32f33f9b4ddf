import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { equations } from "../../../src/core/strength/equations";
import { riseCompare } from "../../../src/core/strength/riseCompare";
import type { LoggedSet } from "../../../src/core/strength/trend/usedSets";
import { elementAt } from "../../present";
import { denseTrend, driftsAround } from "./denseTrend";
import { anyLog } from "./trendLogs";

const { epley } = equations;
const usual = { equation: epley };
const settings = {
  ...usual,
  reserveBias: 0,
  reserveSd: 1,
  maxReps: 12,
  confidence: 0.95,
  curveSd: 0.25,
};

const near = (actual: number, expected: number, absolute = 1e-8) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(absolute);

/** A day every three, fives with two left, each block rising by so much a week. */
const blocks = (before: number, after: number): LoggedSet[] =>
  Array.from({ length: 24 }, (_, i) => {
    const weeks = (3 * i) / 7;
    const turn = (3 * 11) / 7;
    const level = before * Math.min(weeks, turn) + after * Math.max(0, weeks - turn);
    const load = 100 * Math.exp(level) * epley.fraction(7);
    return { date: 46_000 + 3 * i, load, reps: 5, reserve: 2 };
  });
const change = 46_000 + 3 * 12;

describe("comparing the rise of two blocks", () => {
  it("is what the whole normal distribution gives, written out, with a drift for each block", () => {
    fc.assert(
      fc.property(anyLog, fc.nat(), (log, where) => {
        const { days } = denseTrend(log, settings);
        fc.pre(days.length >= 6);
        const at = 3 + (where % (days.length - 5));
        const day = (place: number) => elementAt(days, place);
        const dense = denseTrend(log, settings, driftsAround(day(at)));
        const ours = riseCompare(day(at), log, usual);
        expect([ours.daysBefore, ours.daysAfter]).toEqual([at, days.length - at]);
        const turn = at - 1;
        const last = days.length - 1;
        const before = 7 / (day(turn) - day(0));
        const after = 7 / (day(last) - day(turn));
        const rises = {
          before: dense.contrast({ [turn]: before, 0: -before }),
          after: dense.contrast({ [last]: after, [turn]: -after }),
          difference: dense.contrast({ [last]: after, [turn]: -after - before, 0: before }),
        };
        near(Math.log1p(ours.before), rises.before.mean);
        near(Math.log1p(ours.beforeLow), rises.before.low);
        near(Math.log1p(ours.beforeHigh), rises.before.high);
        near(Math.log1p(ours.after), rises.after.mean);
        near(Math.log1p(ours.afterLow), rises.after.low);
        near(Math.log1p(ours.afterHigh), rises.after.high);
        near(Math.log1p(ours.difference), rises.difference.mean);
        near(Math.log1p(ours.low), rises.difference.low);
        near(Math.log1p(ours.high), rises.difference.high);
        near(ours.chanceOfAFasterRise, rises.difference.chance);
      }),
      { numRuns: 6 },
    );
  });

  it("sees a rise that starts with the change, and one that ends with it", () => {
    const started = riseCompare(change, blocks(0, 0.015), usual);
    expect(started.chanceOfAFasterRise).toBeGreaterThan(0.9);
    expect(started.after).toBeGreaterThan(started.before);
    const ended = riseCompare(change, blocks(0.015, 0), usual);
    expect(ended.chanceOfAFasterRise).toBeLessThan(0.1);
    const steady = riseCompare(change, blocks(0.01, 0.01), usual);
    expect(steady.low < 0 && steady.high > 0).toBe(true);
  });

  it("cuts before the day of the change, at any time of it", () => {
    const log = blocks(0.01, 0);
    const { daysBefore, daysAfter, sets } = riseCompare(change, log, usual);
    expect([daysBefore, daysAfter, sets]).toEqual([12, 12, 24]);
    expect(riseCompare(change + 0.75, log, usual)).toEqual(riseCompare(change, log, usual));
    // Between two days of the log, any date cuts alike.
    expect(riseCompare(change - 2, log, usual)).toEqual(riseCompare(change, log, usual));
    expect(riseCompare(change + 1, log, usual).daysBefore).toBe(13);
  });

  it("has no answer without three days on either side", () => {
    const log = blocks(0, 0);
    expect(() => riseCompare(46_004, log, usual)).toThrow("found 2 and 22");
    expect(() => riseCompare(47_000, log, usual)).toThrow("found 24 and 0");
    expect(riseCompare(46_007, log, usual).daysBefore).toBe(3);
  });
});
