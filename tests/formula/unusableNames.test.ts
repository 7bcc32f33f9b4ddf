import { describe, expect, it } from "vitest";
import { judgeNames, unusableIn } from "../../src/formula/unusableNames";
import { LIMITS } from "../../src/xlsx/limits";

const reasons = (names: Readonly<Record<string, string>>) => {
  const definitions = Object.entries(names).map(([name, text]) => ({ name, text }));
  return Object.fromEntries(
    [...judgeNames(definitions, LIMITS.names).unusable].map(([key, { reason }]) => [key, reason]),
  );
};

describe("a name that refers to itself", () => {
  it("is found, with those it goes by and those that are made of it", () => {
    expect(reasons({ foo: "foo+1" })).toEqual({ foo: "the name foo refers to itself" });
    expect(reasons({ a: "B*2", b: "c+1", c: "A", d: "a+$A$1", e: "$B$2" })).toEqual({
      a: "the name a refers to itself",
      b: "the name b refers to itself",
      c: "the name c refers to itself",
      d: "the name a refers to itself",
    });
  });

  it("is not one whose text, cell or sheet only looks like it", () => {
    expect(reasons({ foo: '"foo"&foo!A1', total: "SUM($A$1:$A$9)" })).toEqual({});
  });
});

describe("names that double each other", () => {
  const doubling = (count: number) =>
    Object.fromEntries(
      Array.from({ length: count }, (_name, at) => [`n${at}_`, `n${at + 1}_+n${at + 1}_`]),
    );

  it("are judged at once, and refused where they are too long written out", () => {
    const found = reasons({ ...doubling(26), n26_: "1" });
    expect(found.n0_).toMatch(/is made of too many others/);
    expect(found.n25_).toBeUndefined();
  });

  it("are refused where they go too deep", () => {
    const chain = Array.from({ length: 5000 }, (_name, at) => [`n${at}_`, `n${at + 1}_`]);
    expect(
      Object.keys(reasons({ ...Object.fromEntries(chain), n5000_: "1" })).length,
    ).toBeGreaterThan(0);
  });
});

describe("a formula", () => {
  it("is too long where its names are, written out, however short each of them is", () => {
    const wide = { name: "wide", text: `${"1+".repeat(500)}1` };
    const judged = judgeNames([wide], LIMITS.names);
    expect(unusableIn("=wide+wide", judged)).toBeUndefined();
    expect(unusableIn(`=${"wide+".repeat(1000)}1`, judged)?.why.reason).toBe(
      "the formula is too long with the name wide written out",
    );
  });
});
