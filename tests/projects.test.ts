import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT } from "../src/tools/paths";
import { projectOf, testFiles, testsByProject } from "./projects";

const loads = (files: string[], packages: string[]) => ({
  files: new Set(files),
  packages: new Set(packages),
});
const file = "tests/core/some.test.ts";

const byProject = await testsByProject();

describe("a test's project", () => {
  it("is what it loads that costs most", () => {
    expect(projectOf(file, loads(["src/core/load/round.ts"], ["fast-check"]))).toBe("unit");
    expect(projectOf(file, loads([], ["@univerjs/core"]))).toBe("engine");
    expect(projectOf(file, loads(["tests/libreOffice.ts"], []))).toBe("engine");
    expect(projectOf(file, loads(["tests/built.ts"], ["@univerjs/core"]))).toBe("dist");
    expect(projectOf(file, loads(["tests/built.ts"], ["playwright-core"]))).toBe("browser");
    expect(projectOf("tests/hostile/some.test.ts", loads([], []))).toBe("hostile");
    expect(projectOf("tests/simulated/some.test.ts", loads([], []))).toBe("simulated");
  });

  it("is found through whatever its helpers load, and types do not count", () => {
    const { unit, engine, dist, browser } = byProject;
    expect(unit).toContain("tests/core/load/round.test.ts");
    expect(engine).toContain("tests/engine/settle.test.ts");
    expect(dist).toContain("tests/hosts/sheets/cells.test.ts");
    expect(browser).toContain("tests/browser/workbook.test.ts");
  });

  it("is exactly one", () => {
    const all = Object.values(byProject).flat();
    expect(all.sort()).toEqual(testFiles());
  });

  it("is seen by what it imports, so none reads what is built but through built.ts", () => {
    const read = (test: string) => readFileSync(join(ROOT, test), "utf8");
    expect(testFiles().filter((test) => /\b(DIST|buildIfStale)\b/.test(read(test)))).toEqual([
      "tests/projects.test.ts",
    ]);
  });
});

describe("the unit project", () => {
  it("cannot load the engine or a browser, even by a name put together while it runs", async () => {
    for (const name of ["@univerjs/core", "playwright-core", "webpack"]) {
      await expect(import(/* @vite-ignore */ name)).rejects.toThrow(/is not for unit tests/);
    }
  });
});
