import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blockPlan, planWeek, type Block } from "../../../src/core/plan/blockPlan";
import { equations } from "../../../src/core/strength/equations";

const { epley, brzycki } = equations;

const block = (
  weeks: number,
  [setsFirst, setsLast]: [number, number],
  [repsLow, repsHigh]: [number, number],
  [reserveFirst, reserveLast]: [number, number],
  name?: string,
): Block => ({ name, weeks, setsFirst, setsLast, repsLow, repsHigh, reserveFirst, reserveLast });

const three = [block(3, [4, 5], [6, 8], [3, 1])];
const twoBlocks = [
  block(2, [3, 3], [8, 10], [2, 1], "Block A"),
  block(1, [2, 2], [3, 3], [1, 0], "Block B"),
];
/** Eleven weeks: three blocks of unequal length, and two easy weeks. */
const easyWeek = block(1, [2, 2], [5, 5], [5, 5], "easy week");
const season = [
  block(4, [3, 4], [10, 12], [3, 2], "Block A"),
  block(3, [4, 4], [6, 8], [3, 1], "Block B"),
  easyWeek,
  block(2, [4, 3], [3, 5], [2, 1], "Block C"),
  easyWeek,
];

describe("a plan of blocks", () => {
  it("has a row a week, its load the one for the middle reps at that week's reserve", () => {
    const plan = blockPlan(100, three, { equation: epley });
    // 7 reps + reserve 3, 2, 1: 1 / (1 + t/30). Sets of 4.5 are a tie and go down.
    expect(plan.map(({ block, week, sets }) => [block, week, sets])).toEqual([
      [1, 1, 4],
      [1, 2, 4],
      [1, 3, 5],
    ]);
    expect(plan.map(({ reserve, repsLow, repsHigh }) => [reserve, repsLow, repsHigh])).toEqual([
      [3, 6, 8],
      [2, 6, 8],
      [1, 6, 8],
    ]);
    [0.75, 10 / 13, 15 / 19].forEach((percent, i) => {
      expect(plan[i]!.percent).toBeCloseTo(percent, 12);
      expect(plan[i]!.load).toBeCloseTo(100 * percent, 10);
      expect(plan[i]!.volumeLoad).toBeCloseTo([2100, 2153.846153846, 2763.157894737][i]!, 8);
    });
  });

  it("counts weeks on, rounds loads after percents, and gives a block of one week its last values", () => {
    const plan = blockPlan(100, twoBlocks, { equation: epley, increment: 2.5 });
    expect(
      plan.map(({ block, week, reserve, load, volumeLoad }) => [
        block,
        week,
        reserve,
        load,
        volumeLoad,
      ]),
    ).toEqual([
      ["Block A", 1, 2, 72.5, 1957.5],
      ["Block A", 2, 1, 75, 2025],
      ["Block B", 3, 0, 90, 540],
    ]);
    [30 / 41, 0.75, 10 / 11].forEach((percent, i) =>
      expect(plan[i]!.percent).toBeCloseTo(percent, 12),
    );
  });

  it("takes one 1RM for all blocks, or one a block", () => {
    const each = blockPlan([100, 120], twoBlocks, { equation: epley });
    expect(each.slice(0, 2)).toEqual(blockPlan(100, twoBlocks, { equation: epley }).slice(0, 2));
    expect(each[2]).toEqual(blockPlan(120, twoBlocks, { equation: epley })[2]);
    expect(blockPlan([100], twoBlocks, { equation: epley })).toHaveLength(3);
    expect(() => blockPlan([100, 110, 120], twoBlocks, { equation: epley })).toThrow(
      "there are 3 one-rep maxima and 2 blocks",
    );
  });

  it("never rounds a load above the 1RM", () => {
    const single = [block(1, [1, 1], [1, 1], [0, 0])];
    const options = { equation: epley, increment: 2.5 };
    expect(blockPlan(141.3, single, options)).toMatchObject([{ percent: 1, load: 140 }]);
    expect(planWeek(141.3, single, 1, options).load).toBe(140);
  });

  it("gives one week alone as the plan has it", () => {
    const options = { equation: epley, increment: 2.5 };
    expect(planWeek(100, twoBlocks, 3, options).load).toBe(90);
    expect(planWeek(100, twoBlocks, 2, options).sets).toBe(3);
    expect(planWeek(120, twoBlocks, 1, options).load).toBe(87.5);
    const plan = blockPlan(140, season, options);
    plan.forEach((row, i) => expect(planWeek(140, season, i + 1, options)).toEqual(row));
  });

  it("fills a squad's eleven weeks, the reserve of each block in whole reps", () => {
    const reserves = blockPlan(100, season, { equation: epley }).map(({ reserve }) => reserve);
    // 3, 2.67, 2.33, 2 in whole reps; a block of one week takes its last reserve.
    expect(reserves).toEqual([3, 3, 2, 2, 3, 2, 1, 5, 2, 1, 5]);
  });

  it("is cheap enough for any grid of lifters and weeks", () => {
    const started = performance.now();
    for (let lifter = 0; lifter < 14; lifter++) {
      for (let week = 1; week <= 10; week++) {
        planWeek(80 + 5 * lifter, season, week, { equation: epley, increment: 2.5 });
      }
    }
    expect(performance.now() - started).toBeLessThan(500);
  });

  it("starts and ends each block where its row says, and never leaves its bounds", () => {
    const pair = (max: number, min = 0) =>
      fc.tuple(fc.integer({ min, max }), fc.integer({ min, max }));
    const anyBlock = fc
      .tuple(fc.integer({ min: 2, max: 12 }), pair(8, 1), pair(10, 1), pair(6))
      .map(([weeks, sets, [a, b], reserves]) =>
        block(weeks, sets, [Math.min(a, b), Math.max(a, b)], reserves),
      );
    fc.assert(
      fc.property(fc.array(anyBlock, { minLength: 1, maxLength: 4 }), (blocks) => {
        const plan = blockPlan(150, blocks, { equation: epley });
        expect(plan.map(({ week }) => week)).toEqual(plan.map((_, i) => i + 1));
        blocks.forEach((given, place) => {
          const rows = plan.filter((row) => row.block === place + 1);
          expect(rows).toHaveLength(given.weeks);
          expect([rows[0]!.sets, rows.at(-1)!.sets]).toEqual([given.setsFirst, given.setsLast]);
          expect(rows[0]!.reserve).toBe(given.reserveFirst);
          expect(rows.at(-1)!.reserve).toBe(given.reserveLast);
          for (const { sets, reserve, load, percent } of rows) {
            expect(Number.isInteger(sets) && Number.isInteger(reserve)).toBe(true);
            expect(load).toBe(150 * percent);
            const t = (given.repsLow + given.repsHigh) / 2 + reserve;
            expect(epley.fraction(t)).toBe(percent);
          }
        });
      }),
    );
  });

  it("names the row of a block that cannot be right", () => {
    const second = (change: Partial<Block>) => () =>
      blockPlan(100, [season[0]!, { ...season[1]!, ...change }], { equation: brzycki });
    expect(second({ weeks: 2.5 })).toThrow("row 2 of the blocks: weeks is 2.5; expected a whole");
    expect(second({ weeks: 600 })).toThrow("row 2 of the blocks: weeks is 600");
    expect(second({ weeks: 519 })).toThrow(/expected at most 520 in all$/);
    expect(second({ setsFirst: 0 })).toThrow("row 2 of the blocks: sets first is 0");
    expect(second({ setsLast: -1 })).toThrow("row 2 of the blocks: sets last is -1");
    expect(second({ repsLow: 0 })).toThrow("row 2 of the blocks: reps low is 0");
    expect(second({ repsHigh: 3 })).toThrow(
      "row 2 of the blocks: reps high is 3; expected at least reps low, 6",
    );
    expect(second({ reserveLast: -1 })).toThrow(
      "row 2 of the blocks: the reserve of the last week",
    );
    expect(second({ repsHigh: 20, row: 9 })).toThrow(
      "row 9 of the blocks: reps plus reserve is 16",
    );
    expect(() => blockPlan(100, [], { equation: epley })).toThrow("there are no blocks");
    expect(() => blockPlan(0, season, { equation: epley })).toThrow("the one-rep max is 0");
    expect(() => planWeek(100, season, 12, { equation: epley })).toThrow(
      "week is 12; expected a week of the plan, 1 to 11",
    );
    expect(() => planWeek(100, season, 0, { equation: epley })).toThrow("week is 0; expected");
  });
});
