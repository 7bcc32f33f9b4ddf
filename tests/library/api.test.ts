import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { apiPages } from "../../src/tools/api/pages";
import { surfaceOf } from "../../src/tools/api/surface";
import { ROOT } from "../../src/tools/paths";
import { built } from "../built";

const read = (path: string) => readFileSync(built("library", path), "utf8");
const FOLDER = join(ROOT, "docs", "api");

describe("what the package gives away", () => {
  const pages = apiPages(read);

  it("is reported page by page, and no other page is there", () => {
    expect(readdirSync(FOLDER).sort()).toEqual([...pages.keys()].sort());
  });

  it.each([...pages.keys()])("is as docs/api/%s says: `npm run api` writes it anew", (name) => {
    expect(readFileSync(join(FOLDER, name), "utf8")).toBe(pages.get(name));
  });
});

describe("every export of the core", () => {
  const entries = surfaceOf("core/index.d.ts", read).indexes.flatMap(
    (index) => surfaceOf(index, read).entries,
  );

  it("is one, under a name of its own", () => {
    const names = entries.map(({ name }) => name);
    expect(names.length).toBeGreaterThan(100);
    expect(new Set(names).size).toBe(names.length);
  });

  it("says of a function what it takes, what it gives, and where that comes from", () => {
    const functions = entries.filter(({ takes }) => takes !== undefined);
    expect(functions.length).toBeGreaterThan(70);
    for (const { name, takes, parameters, returns, about } of functions) {
      const told = parameters.filter(([, text]) => text !== "").map(([parameter]) => parameter);
      expect(told, name).toEqual(takes!.filter((parameter) => parameter !== ""));
      expect(returns, name).not.toBe("");
      expect(about, name).toMatch(/Sources?: |\b(?:18|19|20)\d\d\b|Cochrane Handbook/);
    }
  });

  it("says what it is", () => {
    expect(entries.filter(({ about }) => about === "").map(({ name }) => name)).toEqual([]);
  });
});
