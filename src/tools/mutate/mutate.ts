/**
 * `npm run mutate` changes core and cells in small ways, one at a time (`<` to `<=`, a condition to true), and names each
 * change that no unit test notices. `npm run mutate -- src/core/load` changes the files of a folder, or one file.
 *
 * The tests that load least are asked first, the others only about what those let through. What was found out is kept
 * until the file or a test that loads it changes.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { testsByProject } from "../../../tests/projects";
import { filesUnder, stateOf } from "../freshness";
import { loadedBy } from "../importGraph";
import { CACHE, ROOT } from "../paths";
import { mutantsOf, type Mutant } from "./mutants";
import { runnerOf, type Job } from "./pool";

/** The seed of all random tests, or a change might be noticed by luck. */
process.env.SEED ??= "2026";

/** This many tests that load the file, and least besides, come first; then the rest. */
const NEAREST = 3;
/** A changed source may take this many times as long as the right one, and then some. */
const PATIENCE = 5;
const START = 20_000;

interface Found {
  readonly state: string;
  readonly mutants: number;
  readonly survivors: readonly Omit<Mutant, "source">[];
}

const KEPT = join(CACHE, "mutants.json");
const kept = (existsSync(KEPT) ? JSON.parse(readFileSync(KEPT, "utf8")) : {}) as Record<
  string,
  Found
>;

const asked = process.argv.slice(2);
const targets = (asked.length > 0 ? asked : ["src/core", "src/cells"])
  .flatMap(filesUnder)
  .filter((file) => file.endsWith(".ts"));

const { unit } = await testsByProject();
const loaded = await loadedBy(unit);

/** The unit tests that load a file, those that load least first. */
function testsOf(target: string): string[] {
  const size = (test: string) => loaded.get(test)?.files.size ?? 0;
  return unit
    .filter((test) => loaded.get(test)?.files.has(target))
    .sort((a, b) => size(a) - size(b));
}

async function examine(target: string): Promise<Found> {
  const source = readFileSync(join(ROOT, target), "utf8");
  const tests = testsOf(target);
  const state = stateOf([target, ...tests], process.env.SEED ?? "");
  if (kept[target]?.state === state) return kept[target];

  const mutants = mutantsOf(source);
  const queue = [...mutants];
  const survivors: Mutant[] = [];
  const groups = [tests.slice(0, NEAREST), tests.slice(NEAREST)];
  const job: Job = { target, tests: groups.filter((group) => group.length > 0) };
  const work = async () => {
    const runner = runnerOf(job);
    try {
      const start = performance.now();
      if (tests.length > 0 && !(await runner.survives(source, 10 * 60_000))) {
        throw new Error(`${target}: its tests fail as it is`);
      }
      const patience = START + PATIENCE * (performance.now() - start);
      for (let mutant = queue.shift(); mutant; mutant = queue.shift()) {
        if (tests.length === 0 || (await runner.survives(mutant.source, patience))) {
          survivors.push(mutant);
        }
      }
    } finally {
      runner.close();
    }
  };
  const workers = Number(process.env.VITEST_MAX_WORKERS ?? availableParallelism());
  await Promise.all(Array.from({ length: mutants.length > 0 ? workers : 0 }, work));
  return {
    state,
    mutants: mutants.length,
    survivors: survivors
      .sort((a, b) => a.line - b.line)
      .map(({ line, from, to }) => ({ line, from, to })),
  };
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
