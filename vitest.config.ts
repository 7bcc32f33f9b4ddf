import { availableParallelism } from "node:os";
import { join } from "node:path";
import { tsImport } from "tsx/esm/api";
import { defineConfig } from "vitest/config";
import type * as projects from "./tests/projects";

// Vite's own loader of configurations would have each of our imports name its file's ending.
const { testsByProject, isTooMuchForUnit } = (await tsImport(
  "./tests/projects.ts",
  import.meta.url,
)) as typeof projects;

const files = await testsByProject();

/** The same in CI every time; elsewhere another each time, so that more is tried than one run can. */
const seed = process.env.SEED ?? (process.env.CI ? "2026" : String(Date.now() % 1_000_000));
process.stderr.write(`Random tests: SEED=${seed}\n`);

const project = (name: projects.Project, more: object = {}) => ({
  resolve: { alias: { typescript: join(import.meta.dirname, "tests/setup/typescript.ts") } },
  test: {
    name,
    include: files[name],
    env: { SEED: seed },
    setupFiles: ["tests/random.ts"],
    // Files share what they load, and so the engine's start and whatever a helper computes once.
    isolate: false,
    // Most of what a test makes is soon forgotten; where there is room for it, less is moved about.
    execArgv: ["--max-semi-space-size=64"],
    // Node's own way with a CommonJS package: no proxy stands before each call of one.
    deps: { interopDefault: false },
    testTimeout: 30_000,
    hookTimeout: 180_000,
    ...more,
  },
});

/** Keeps from unit tests what would make them slow. */
const lean = {
  name: "lean",
  enforce: "pre" as const,
  resolveId(name: string) {
    if (isTooMuchForUnit(name)) throw new Error(`${name} is not for unit tests`);
  },
};

export default defineConfig({
  test: {
    maxWorkers: availableParallelism(),
    // What became of each module the last time, until it changes.
    experimental: { fsModuleCache: true, fsModuleCachePath: "node_modules/.cache/vitest" },
    projects: [
      { ...project("unit"), plugins: [lean] },
      project("engine", { setupFiles: ["tests/random.ts", "tests/setup/engine.ts"] }),
      project("dist", { globalSetup: ["tests/setup/dist.ts"] }),
      project("browser", {
        globalSetup: ["tests/setup/browser.ts"],
        // A computer with other work to do takes its time over a page this size.
        testTimeout: 300_000,
        expect: { poll: { timeout: 60_000, interval: 100 } },
        // Where nobody can look, a browser that stumbled once is asked again; the report says "retry".
        retry: process.env.CI ? 1 : 0,
      }),
      project("hostile"),
      project("simulated"),
    ],
  },
});
