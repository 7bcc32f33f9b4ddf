import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { devDependencies, scripts } from "../../package.json";
import { ROOT } from "../../src/tools/paths";
import { caught } from "../present";

const guide = readFileSync(join(ROOT, "DEVELOPERS.md"), "utf8");

/** What stands as code in a line, without whole blocks of it. */
const quoted = [...new Set(caught(guide, /`([^`\n]+)`/g))];

/** Every file and folder of ours. */
const paths = [".github", "docs", "shared", "src", "tests"].flatMap((folder) =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" }).map(
    (path) => `/${folder}/${path.replaceAll("\\", "/")}`,
  ),
);

/** Files may be named by the end of their path, and modules without their ending: `core/load/round`. */
const isThere = (name: string) => {
  const end = `/${name.replace(/\/$/, "")}`;
  const isEnd = (path: string) => path.endsWith(end) || path.endsWith(`${end}.ts`);
  return existsSync(join(ROOT, name)) || paths.some(isEnd);
};

describe("DEVELOPERS.md", () => {
  it("names only files and folders that there are", () => {
    const named = quoted.filter(
      (text) =>
        /^\.?\w[\w./-]*$/.test(text) && /\/|\.(?:ts|mjs|js|json|md|yml|xml|cff)$/.test(text),
    );
    expect(named.length).toBeGreaterThan(60);
    // What the build makes is there after a build alone.
    const missing = named.filter(
      (name) => !/^(?:dist|node_modules)\//.test(name) && !isThere(name),
    );
    expect(missing).toEqual([]);
  });

  it("names only scripts that there are", () => {
    const named = caught(guide, /npm run ([a-z]+)/g);
    expect(new Set(named).size).toBeGreaterThan(5);
    for (const name of named) expect(scripts).toHaveProperty(name);
  });

  it("names only packages that are used", () => {
    const named = quoted.filter((text) => /^@[a-z]+\/[\w-]+$/.test(text));
    expect(named.length).toBeGreaterThan(4);
    for (const name of named) expect(devDependencies).toHaveProperty([name]);
  });
});
