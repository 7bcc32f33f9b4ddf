/** A process of `npm run mutate`: told a changed source, it says whether a test fails by it. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { ROOT } from "../paths";
import { modulesOf } from "./modules";
import type { Answer, Job, Question } from "./pool";
import { failureIn } from "./testRun";

const { target, tests } = JSON.parse(process.argv[2] ?? "") as Job;
const right = readFileSync(join(ROOT, target), "utf8");
const SETUP = "tests/random.ts";
const modules = await modulesOf([SETUP, ...tests]);
modules.load(SETUP);
// That a property fails is enough; its smallest example nobody will see.
fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true });

const say = (answer: Answer) => process.send!(answer);

/** How often the loops of the right source turn in each test. A changed one may take as many times as many. */
const turns = new Map<string, number>();
const LONGER = 3;
const AT_LEAST = 1_000_000;

async function turnsIn(test: string): Promise<number> {
  const known = turns.get(test);
  if (known !== undefined) return known;
  modules.change(target, right);
  modules.limitTurns(Infinity);
  await failureIn(test, modules);
  const found = modules.limitTurns(Infinity);
  turns.set(test, found);
  return found;
}

async function answer({ source, tests }: Question): Promise<void> {
  for (const test of tests) {
    const most = AT_LEAST + LONGER * (await turnsIn(test));
    const start = performance.now();
    modules.change(target, source);
    modules.limitTurns(most);
    const failure = await failureIn(test, modules);
    say({ test, failure, milliseconds: performance.now() - start });
    if (failure !== undefined) return;
  }
}

process.on("message", (question: Question) => void answer(question));
process.send!("ready");
