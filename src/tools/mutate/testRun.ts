import { join } from "node:path";
import { startTests, type VitestRunner } from "@vitest/runner";
import { ROOT } from "../paths";
import type { Modules } from "./modules";

/** The first test of a file that fails, and why; nothing where all pass. What comes after it is not run. */
export async function failureIn(file: string, modules: Modules): Promise<string | undefined> {
  let failure: string | undefined;
  const runner: VitestRunner = {
    config: {
      root: ROOT,
      name: undefined,
      setupFiles: [],
      passWithNoTests: true,
      testNamePattern: undefined,
      allowOnly: true,
      chaiConfig: undefined,
      sequence: { seed: 0, hooks: "stack", setupFiles: "list" },
      maxConcurrency: 1,
      testTimeout: 60_000,
      hookTimeout: 60_000,
      retry: 0,
      includeTaskLocation: false,
      tags: [],
      tagsFilter: undefined,
      strictTags: false,
    },
    importFile() {
      modules.forget(file);
      return modules.load(file);
    },
    onBeforeRunTask(test) {
      if (failure !== undefined) test.mode = "skip";
    },
    onAfterRunTask({ name, result }) {
      if (result?.state === "fail") failure ??= `${name}: ${result.errors?.[0]?.message}`;
    },
  };
  const [ran] = await startTests([join(ROOT, file)], runner);
  const failed = ran?.result?.state === "fail";
  return failure ?? (failed ? `${file}: ${ran.result?.errors?.[0]?.message}` : undefined);
}
