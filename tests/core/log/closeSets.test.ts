import { describe, expect, test } from "vitest";
import { closeSets, isClose } from "../../../src/core/log/closeSets";

const all = () => 0;

describe("a close set", () => {
  test("is one with at most so many reps left, that many included", () => {
    expect([3.5, 4, 4.5].map((reserve) => isClose(reserve, 4))).toEqual([true, true, false]);
  });

  test("is judged without binary dust: 0.1 + 0.2 is within 0.3", () => {
    expect(isClose(0.1 + 0.2, 0.3)).toBe(true);
  });

  test("can be limited to sets to failure", () => {
    expect([0, 0.5].map((reserve) => isClose(reserve, 0))).toEqual([true, false]);
  });

  test("is never one that nobody judged", () => {
    expect(isClose(null, 30)).toBe(false);
  });
});

test("a row stands for its sets, for one set where none are written down", () => {
  const log = { reps: [8, 8, 6], reserve: [4, 2, 0], sets: [3, null, 2] };
  expect(closeSets(log, 4, all, 1)).toEqual([6]);
});

test("a log without a reserve column is a log of sets to failure", () => {
  expect(closeSets({ reps: [8, 8], reserve: undefined, sets: undefined }, 0, all, 1)).toEqual([2]);
});

test("each group has its own sets, and a group without any has 0", () => {
  const log = { reps: [5, 5, 5], reserve: [1, 9, 2], sets: [2, 4, 1] };
  expect(closeSets(log, 4, (row) => row % 2, 2)).toEqual([3, 0]);
});
