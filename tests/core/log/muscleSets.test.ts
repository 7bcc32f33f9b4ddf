import { expect, test } from "vitest";
import { muscleSets } from "../../../src/core/log/muscleSets";

/** Squat: quads 1, glutes 0.5. Bench pull: back 1. Columns: quads, glutes, back. */
const SHARES = [
  [1, 0.5, 0],
  [0, 0, 1],
];
const [squat, benchPull] = [0, 1];

test("a set counts whole for the muscle that does the work and half for one that helps", () => {
  const log = {
    reps: [5, 8],
    reserve: [2, 1],
    sets: [3, 4],
    exerciseOf: (row: number) => (row === 0 ? squat : benchPull),
  };
  // 3 squat sets: 3 x 1 and 3 x 0.5; 4 sets of bench pull.
  expect(muscleSets(log, SHARES, 4, () => 0, 1)).toEqual([[3, 1.5, 4]]);
});

test("only close sets count, and each group keeps its own", () => {
  const log = {
    reps: [5, 5, 5, null],
    reserve: [2, 5, null, 0],
    sets: undefined,
    exerciseOf: () => squat,
  };
  expect(muscleSets(log, SHARES, 4, (row) => (row === 0 ? 0 : 1), 2)).toEqual([
    [1, 0.5, 0],
    [0, 0, 0],
  ]);
});
