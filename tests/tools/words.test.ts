import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { FUNCTIONS_PAGE, functionsPage } from "../../src/tools/docs";
import { cautions } from "../../src/tools/help";
import { ROOT } from "../../src/tools/paths";
import { caught } from "../present";

const read = (file: string) => readFileSync(join(ROOT, file), "utf8");
const flat = (text: string) => text.replace(/\s+/g, " ");

describe("docs/functions.md", () => {
  test("is what npm run docs would write now", { timeout: 120_000 }, async () => {
    expect(readFileSync(FUNCTIONS_PAGE, "utf8")).toBe(await functionsPage());
  });
});

describe("the README", () => {
  test("carries every caution", () => {
    const readme = flat(read("README.md"));
    for (const caution of cautions) expect(readme).toContain(caution);
  });

  test("names only scripts that there are", () => {
    const { scripts } = JSON.parse(read("package.json")) as { scripts: Record<string, string> };
    const named = caught(read("README.md"), /npm run ([\w-]+)/g);
    expect(named.length).toBeGreaterThan(2);
    for (const name of named) expect(scripts).toHaveProperty(name);
  });
});

describe.each([
  "README.md",
  "DEVELOPERS.md",
  "docs/accuracy.md",
  "docs/command-line.md",
  "docs/sheets.md",
])("%s", (file) => {
  test("links only to files that there are", () => {
    const links = caught(read(file), /\]\(([^)#\s]+)[^)]*\)/g);
    for (const link of links.filter((one) => !/^https?:/.test(one))) {
      expect(existsSync(join(ROOT, dirname(file), link)), link).toBe(true);
    }
  });
});
