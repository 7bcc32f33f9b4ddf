/** A process of `npm run mutate`: told a changed source, it says whether a test fails by it. */
import { modulesOf } from "./modules";
import type { Answer, Job, Question } from "./pool";
import { failureIn } from "./testRun";

const { target, tests } = JSON.parse(process.argv[2] ?? "") as Job;
const SETUP = "tests/random.ts";
const modules = await modulesOf([SETUP, ...tests]);
modules.load(SETUP);

const say = (answer: Answer) => process.send!(answer);

/** How often the loops of the right source turn in each test. A changed one may take as many times as many. */
const turns = new Map<string, number>();
const LONGER = 20;
const AT_LEAST = 1_000_000;

async function answer({ source, isRight, tests }: Question): Promise<void> {
  modules.change(target, source);
  for (const test of tests) {
    const start = performance.now();
    modules.limitTurns(isRight ? Infinity : AT_LEAST + LONGER * (turns.get(test) ?? Infinity));
    const failure = await failureIn(test, modules);
    if (isRight) turns.set(test, modules.limitTurns(Infinity));
    say({ test, failure, milliseconds: performance.now() - start });
    if (failure !== undefined) return;
  }
}

process.on("message", (question: Question) => void answer(question));
process.send!("ready");
