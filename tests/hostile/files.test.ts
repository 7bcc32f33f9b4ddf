import { expect, it } from "vitest";
import { seed } from "../random";
import { hostileFiles } from "./files";
import { faultOf, tryFiles } from "./tryFiles";

/** The files that once hung or killed a host are tried in every run. */
const alwaysTried = [
  'a row "1e308"',
  'a row "1000000000000000"',
  "an array over a whole sheet",
  "cells to the end of the sheet",
  "a merge of a whole sheet",
  "columns from -2000000000",
  "100,000 minus signs",
  "a chain of 20,000 plus signs",
  "A:A:A: over and over",
  "a name that means itself",
  "26 names that double each other",
  "a part called __proto__",
];
/** Of the others one of so many is, from each seed another; `HOSTILE=all` tries all of them. */
const share = 8;

const files = hostileFiles(seed);
const chosen = files.flatMap(({ name }, index) => {
  const isTried = process.env.HOSTILE === "all" || alwaysTried.includes(name);
  return isTried || index % share === seed % share ? [index] : [];
});

it("are at least 200, each with a name of its own", () => {
  const names = files.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  expect(names.length).toBeGreaterThanOrEqual(200);
  expect(alwaysTried.filter((name) => !names.includes(name))).toEqual([]);
});

it(
  "come to the right values or are refused in one clear line, within 5 s and 500 MB, in both hosts",
  { timeout: 600_000 },
  async () => {
    const tried = await tryFiles(seed, chosen);
    expect(tried.flatMap((each) => faultOf(each) ?? [])).toEqual([]);
    expect(tried).toHaveLength(2 * chosen.length);
    const { seconds, megabytes } = worstOf(tried);
    process.stderr.write(
      `${chosen.length} hostile files, at worst ${seconds} s and ${megabytes} MB\n`,
    );
  },
);

function worstOf(tried: readonly { seconds: number; megabytes: number }[]) {
  const worst = (of: "seconds" | "megabytes") => Math.max(...tried.map((each) => each[of]));
  return { seconds: worst("seconds").toFixed(1), megabytes: Math.round(worst("megabytes")) };
}
