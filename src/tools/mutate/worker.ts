/** A process of `npm run mutate`: told a changed source, it says whether a test fails by it. */
import { join } from "node:path";
import { createVitest } from "vitest/node";
import { ROOT } from "../paths";
import type { Job } from "./pool";

const { target, tests } = JSON.parse(process.argv[2] ?? "") as Job;
const path = join(ROOT, target);
let source = "";
let isFirst = true;
let failing: readonly string[] = [];

const vitest = await createVitest(
  "test",
  {
    config: false,
    root: ROOT,
    include: tests.flat(),
    setupFiles: ["tests/random.ts"],
    env: { SEED: process.env.SEED ?? "2026" },
    deps: { interopDefault: false },
    isolate: false,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // A thread ends with this process, even one that a change has sent round for ever.
    pool: "threads",
    maxWorkers: 1,
    watch: false,
    bail: 1,
    reporters: [{}],
  },
  {
    plugins: [
      {
        name: "mutant",
        enforce: "pre",
        load: (id) => (id === path && source !== "" ? source : null),
      },
    ],
  },
);
const specifications = new Map(
  (await vitest.globTestSpecifications()).map((each) => [each.moduleId, each]),
);

/** Whether all of some tests pass. */
async function pass(files: readonly string[]): Promise<boolean> {
  const asked = files.map((file) => specifications.get(join(ROOT, file))!);
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(asked);
  const failed = testModules.filter((each) => !each.ok()).map(({ moduleId }) => moduleId);
  failing = [...failed, ...unhandledErrors.map(String)];
  return failing.length === 0;
}

process.on("message", (changed: string) => {
  void (async () => {
    source = changed;
    vitest.invalidateFile(path);
    let survives = true;
    for (const files of tests) survives &&= await pass(files);
    process.exitCode = 0;
    // Before anything is changed no test may fail, so it is worth saying which does.
    if (!survives && isFirst) process.stderr.write(`${failing.join("\n")}\n`);
    isFirst = false;
    process.send!(survives);
  })();
});
process.send!("ready");
