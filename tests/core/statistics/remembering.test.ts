import { expect, test } from "vitest";
import { remembering } from "../../../src/core/statistics/remembering";

test("what was found for the same numbers is not computed again", () => {
  let computed = 0;
  const sum = remembering((a, b) => {
    computed += 1;
    return a + b;
  });
  expect([sum(1, 2), sum(1, 2), sum(2, 1), sum(1, 2)]).toEqual([3, 3, 3, 3]);
  expect(computed).toBe(2);
});

test("numbers that only look alike when written side by side are told apart", () => {
  const text = remembering((a, b) => a * 1000 + b);
  expect(text(1, 11)).toBe(1011);
  expect(text(11, 1)).toBe(11_001);
});

test("it goes on being right when it has had to forget", () => {
  const square = remembering((x) => x * x);
  const numbers = Array.from({ length: 10_000 }, (_, x) => x);
  expect(numbers.map((x) => square(x))).toEqual(numbers.map((x) => x * x));
  expect(square(3)).toBe(9);
});
