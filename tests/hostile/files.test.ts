import { expect, it } from "vitest";
import { seed } from "../random";
import { hostileFiles } from "./files";
import { faultOf, tryFiles } from "./tryFiles";

/** Of files like these every fourth is tried in each run, another fourth from another seed. */
const sampled = /^(?:cut|byte changed|something changed) \d+$/;
const share = 4;

it("are at least 200, each with a name of its own", () => {
  const names = hostileFiles(seed).map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  expect(names.length).toBeGreaterThanOrEqual(200);
});

it(
  "come to the right values or are refused in one clear line, within 5 s and 500 MB, in both hosts",
  { timeout: 600_000 },
  async () => {
    const all = process.env.HOSTILE === "all";
    const chosen = hostileFiles(seed).flatMap(({ name }, index) =>
      all || !sampled.test(name) || index % share === seed % share ? [index] : [],
    );
    const tried = await tryFiles(seed, chosen);
    expect(tried.flatMap((each) => faultOf(each) ?? [])).toEqual([]);
    expect(tried).toHaveLength(2 * chosen.length);
  },
);
