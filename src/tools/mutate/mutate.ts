/**
 * `npm run mutate` changes core and cells in small ways, one at a time (`<` to `<=`, a condition to true), and names each
 * change that no unit test near it notices: what a file promises is to be held by a test beside it.
 * `npm run mutate -- src/core/load` changes the files of a folder, or one file; with `--all` every unit test that loads
 * the file is asked about what those let through.
 *
 * The tests that load least are asked first. What was found out is kept until the file or a test that loads it changes.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { testsByProject } from "../../../tests/projects";
import { filesUnder, stateOf } from "../freshness";
import { loadedBy } from "../importGraph";
import { CACHE, ROOT } from "../paths";
import { mutantsOf, type Mutant } from "./mutants";
import { runnerOf, type Answer, type Job, type Runner } from "./pool";

/** The seed of all random tests, or a change might be noticed by luck. */
process.env.SEED ??= "2026";

/** So many of the tests that load a file, and least besides, are asked where its room has none. */
const NEAREST = 3;
/** With a changed source a test may take this many times as long as with the right one, and then some. */
const PATIENCE = 5;
const AT_LEAST = 10_000;
const LONGEST = 5 * 60_000;

interface Found {
  readonly state: string;
  readonly mutants: number;
  readonly survivors: readonly Omit<Mutant, "source">[];
}

const WORKERS = Number(process.env.VITEST_MAX_WORKERS ?? availableParallelism());

const KEPT = join(CACHE, "mutants.json");
const kept = (existsSync(KEPT) ? JSON.parse(readFileSync(KEPT, "utf8")) : {}) as Record<
  string,
  Found
>;

const {
  values: { all: asksAll },
  positionals,
} = parseArgs({ allowPositionals: true, options: { all: { type: "boolean", default: false } } });
const targets = (positionals.length > 0 ? positionals : ["src/core", "src/cells"])
  .flatMap(filesUnder)
  .filter((file) => file.endsWith(".ts"));

const { unit } = await testsByProject();
const loaded = await loadedBy(unit);

/** Whether a test is in the room of a file: tests/core for src/core. */
const isBeside = (test: string, target: string) =>
  test.startsWith(target.replace(/^src\/(\w+)\/.*/, "tests/$1/"));

/** The unit tests that load a file, those that load least first: its room's own, or a few where it has none, or all. */
function testsOf(target: string): string[] {
  const size = (test: string) => loaded.get(test)?.files.size ?? 0;
  const tests = unit
    .filter((test) => loaded.get(test)?.files.has(target))
    .sort((a, b) => size(a) - size(b));
  const beside = tests.filter((test) => isBeside(test, target));
  if (asksAll) return [...new Set([...beside, ...tests])];
  return beside.length > 0 ? beside : tests.slice(0, NEAREST);
}

async function examine(target: string): Promise<Found> {
  const source = readFileSync(join(ROOT, target), "utf8");
  const tests = testsOf(target);
  const state = stateOf([target, ...tests], tests.join());
  if (kept[target]?.state === state) return kept[target];

  const mutants = mutantsOf(source);
  const survivors =
    tests.length > 0 ? await survivorsAmong(mutants, source, { target, tests }) : mutants;
  return {
    state,
    mutants: mutants.length,
    survivors: [...survivors]
      .sort((a, b) => a.line - b.line)
      .map(({ line, from, to }) => ({ line, from, to })),
  };
}

/** The changes that none of the tests notices. */
async function survivorsAmong(
  mutants: readonly Mutant[],
  right: string,
  job: Job,
): Promise<Mutant[]> {
  const survivors: Mutant[] = [];
  const queue = [...mutants];
  const workers = Math.min(queue.length, WORKERS);
  await Promise.all(
    Array.from({ length: workers }, async () => {
      const runner = runnerOf(job);
      try {
        const times = await timesOf(right, job, runner);
        const time = (test: string) => times.get(test) ?? 0;
        const patience = (test: string) => AT_LEAST + PATIENCE * time(test);
        const tests = job.tests.filter((test) => times.has(test));
        for (let mutant = queue.shift(); mutant; mutant = queue.shift()) {
          const answers = await runner.ask({ source: mutant.source, tests }, patience);
          if (!answers.some(isFailure)) survivors.push(mutant);
        }
        // A change must leave nothing behind by which the next ones fail.
        const after = await runner.ask({ source: right, tests }, patience);
        const { test, failure } = after.find(isFailure) ?? {};
        if (test !== undefined) throw new Error(`${test} fails for good: ${failure}`);
      } finally {
        runner.close();
      }
    }),
  );
  return survivors;
}

const isFailure = ({ failure }: Answer) => failure !== undefined;

/** How long each test takes with the right source, in milliseconds. One that fails by itself is left out, and named. */
async function timesOf(source: string, { tests }: Job, runner: Runner) {
  const times = new Map<string, number>();
  for (const test of tests) {
    const question = { source, tests: [test] };
    for (const { failure, milliseconds } of await runner.ask(question, () => LONGEST)) {
      if (failure === undefined) times.set(test, milliseconds);
      else console.error(`  left out: ${test}: ${inOneLine(failure)}`);
    }
  }
  return times;
}

let [all, alive] = [0, 0];
for (const target of targets) {
  const found = await examine(target);
  kept[target] = found;
  mkdirSync(CACHE, { recursive: true });
  writeFileSync(KEPT, JSON.stringify(kept));
  const { mutants, survivors } = found;
  all += mutants;
  alive += survivors.length;
  const noticed = mutants - survivors.length;
  console.log(`${target}: ${noticed} of ${mutants} noticed`);
  for (const { line, from, to } of survivors) {
    console.log(`  ${target}:${line}  ${inOneLine(from)}  →  ${inOneLine(to)}`);
  }
}
console.log(`${all - alive} of ${all} noticed, ${((100 * (all - alive)) / all).toFixed(1)}%`);

function inOneLine(text: string): string {
  const line = text.replace(/\s+/g, " ");
  return line.length > 70 ? `${line.slice(0, 67)}...` : line;
}
