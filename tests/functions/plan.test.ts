import { describe, expect, it } from "vitest";
import { cellAt, only } from "../present";
import { call, messageOf, shown, value } from "./catalogue";

describe("RESERVETAPER", () => {
  it("gives one week, or the weeks of a range, in its shape", () => {
    const all = call("RESERVETAPER", 4, 3, 0).flat();
    expect(call("RESERVETAPER", 4, 3, 0, [[1, 2, 3, 4]])).toEqual([all]);
    expect(value("RESERVETAPER", 4, 3, 0, 4)).toBe(0);
    expect(call("RESERVETAPER", 4, 3, 0, [["week"], [1], [""], [4]])).toEqual([
      [""],
      [3],
      [""],
      [0],
    ]);
  });

  it("shows how blocks repeat where a week is past the last", () => {
    expect(shown(value("RESERVETAPER", 4, 3, 0, 5))).toMatch(/^#VALUE! .*5.*MOD/);
  });

  it("rounds a tie up, to the cautious side", () => {
    expect(call("RESERVETAPER", 3, 1, 0)).toEqual([[1], [1], [0]]);
  });

  it("rounds to whole reps unless a step is given, 0 being none", () => {
    expect(call("RESERVETAPER", 3, 2, 1, null, "")).toEqual([[2], [2], [1]]);
    expect(call("RESERVETAPER", 3, 2, 1, null, 0)).toEqual([[2], [1.5], [1]]);
  });

  it("can go up again, as in an easy week", () => {
    expect(call("RESERVETAPER", 3, 0, 4)).toEqual([[0], [2], [4]]);
  });

  it("takes a reserve of 0 for a value and a blank for not filled in", () => {
    expect(value("RESERVETAPER", 1, 2, 0)).toBe(0);
    expect(value("RESERVETAPER", 4, "", 0)).toBe("");
    expect(value("RESERVETAPER", 4, 3, "")).toBe("");
  });
});

const blocks = [
  ["block", "weeks", "sets 1", "sets 2", "low", "high", "from", "to"],
  ["Block A", 3, 3, 5, 8, 10, 3, 1],
  ["", "", "", "", "", "", "", ""],
  ["easy week", 1, 2, 2, 5, 5, 4, 4],
];

describe("BLOCKPLAN", () => {
  it("counts its weeks on through the blocks, under headings", () => {
    const [headings, ...weeks] = call("BLOCKPLAN", 140, blocks, 2.5);
    expect(headings).toEqual([
      "block",
      "week",
      "sets",
      "reps low",
      "reps high",
      "reserve",
      "percent",
      "load",
      "volume load",
    ]);
    expect(weeks.map(([block, week, sets]) => [block, week, sets])).toEqual([
      ["Block A", 1, 3],
      ["Block A", 2, 4],
      ["Block A", 3, 5],
      ["easy week", 4, 2],
    ]);
  });

  it("gives blocks without names their numbers", () => {
    const unnamed = blocks.slice(1, 2).map((row) => row.slice(1));
    expect(call("BLOCKPLAN", 140, unnamed)[1]?.[0]).toBe(1);
  });

  it("takes a maximum for all blocks, or one a block", () => {
    const [, first, , , last] = call("BLOCKPLAN", [[140], [150]], blocks, 2.5);
    expect(first?.[7]).toBe(cellAt(call("BLOCKPLAN", 140, blocks, 2.5), 1, 7));
    expect(last?.[7]).toBe(cellAt(call("BLOCKPLAN", 150, blocks, 2.5), 4, 7));
    expect(shown(value("BLOCKPLAN", [[140], [150], [160]], blocks))).toMatch(/^#VALUE! .*3.*2/);
  });

  it("names the row of a block that cannot be right", () => {
    const bad = blocks.map((row, at) =>
      at === 3 ? row.map((cell, c) => (c === 1 ? "1wk" : cell)) : row,
    );
    expect(shown(value("BLOCKPLAN", 140, bad))).toMatch(
      /^#VALUE! the 4th row of weeks is text, "1wk"/,
    );
    const turned = [["Block A", 3, 3, 5, 10, 8, 3, 1]];
    expect(shown(value("BLOCKPLAN", 140, turned))).toMatch(
      /^#VALUE! the 1st row of the blocks.*(10.*8|8.*10)/,
    );
  });

  it("waits for the maximum and for the blocks", () => {
    expect(call("BLOCKPLAN", "", blocks)).toEqual([[""]]);
    expect(call("BLOCKPLAN", 140, "")).toEqual([[""]]);
  });
});

describe("PLANWEEK", () => {
  it("gives each number of the plan, week by week and column by column", () => {
    const [headings, ...weeks] = call("BLOCKPLAN", 140, blocks, 2.5);
    weeks.forEach((week, at) => {
      expect(call("PLANWEEK", 140, blocks, at + 1, [headings], 2.5)).toEqual([week]);
    });
  });

  it("fills lifters down and weeks across", () => {
    const grid = call(
      "PLANWEEK",
      [["1RM"], [140], [""], [100]],
      blocks,
      [[1, 2, 3, 4]],
      "load",
      2.5,
    );
    expect(grid.map((row) => row.length)).toEqual([4, 4, 4, 4]);
    expect([grid[0], grid[2]]).toEqual(Array(2).fill(["", "", "", ""]));
    expect(grid[1]?.[2]).toBe(value("PLANWEEK", 140, blocks, 3, "load", 2.5));
  });

  it("refuses a week past the plan, in its cell only", () => {
    const [last, beyond] = only(call("PLANWEEK", 140, blocks, [[4, 5]], "sets"));
    expect(last).toBe(2);
    expect(shown(beyond)).toMatch(/^#VALUE! the 2nd column: .*5/);
  });
});

describe("PLANCHECK", () => {
  it("has no reserve off and no strength off where no reserve was recorded", () => {
    const [load, reps, reserve, strength] = only(call("PLANCHECK", 100, 5, 2, 102.5, 6, ""));
    expect(load).toBeCloseTo(0.025, 12);
    expect([reps, reserve, strength]).toEqual([1, "", ""]);
    expect(shown(value("PLANCHECK", 100, 5, 2, 102.5, 6, "", null, "strength off"))).toMatch(
      /^#N\/A ./,
    );
  });

  it("takes a reserve of 0 for a set to failure", () => {
    const [, , reserve, strength] = only(call("PLANCHECK", 100, 5, 0, 100, 5, 0));
    expect([reserve, strength]).toEqual([0, 0]);
  });

  it("waits for the set", () => {
    expect(call("PLANCHECK", 100, 5, 2, "", "", "")).toEqual([["", "", "", ""]]);
  });

  it("lifts over the log, one part in a column", () => {
    const off = call(
      "PLANCHECK",
      100,
      5,
      2,
      [["load"], [100], ["80kg"]],
      5,
      2,
      null,
      "strength off",
    );
    expect(off.slice(0, 2)).toEqual([[""], [0]]);
    expect(messageOf(off.slice(2))).toMatch(/^#VALUE! the 3rd row of load is text/);
  });
});
