import { expect, it } from "vitest";
import { loadCommandLine } from "../bench/load";
import { built } from "../built";

it("calculates several workbooks at once, each right", { timeout: 180_000 }, async () => {
  const { wrong, megabytes } = await loadCommandLine(built("cli.js"), 4, 200);
  expect(wrong).toBe(0);
  expect(megabytes).toBeLessThan(500);
});
