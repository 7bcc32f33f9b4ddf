import { fork, type ChildProcess } from "node:child_process";
import { join } from "node:path";

/** A source to change, and the tests that load it. */
export interface Job {
  readonly target: string;
  readonly tests: readonly string[];
}

/** A source, the right one or a changed one, and the tests to hold it to, in their order. */
export interface Question {
  readonly source: string;
  readonly tests: readonly string[];
}

/** What became of one test of a question; after one that fails there are no more. */
export interface Answer {
  readonly test: string;
  readonly failure?: string;
  readonly milliseconds: number;
}

/** Runs changed sources through tests, one at a time. */
export interface Runner {
  /** What became of the tests, as far as the first that fails. One that takes too long fails by that. */
  ask(question: Question, patience: (test: string) => number): Promise<Answer[]>;
  close(): void;
}

export function runnerOf(job: Job): Runner {
  let worker: Promise<ChildProcess> | undefined;

  const start = () =>
    new Promise<ChildProcess>((resolve, reject) => {
      const child = fork(join(import.meta.dirname, "worker.ts"), [JSON.stringify(job)], {
        execArgv: ["--import", "tsx"],
        stdio: ["ignore", "ignore", "inherit", "ipc"],
      });
      child.once("message", () => resolve(child));
      child.once("exit", () => reject(new Error("the tests' process did not start")));
    });
  const close = () => {
    void worker?.then((child) => child.kill("SIGKILL"));
    worker = undefined;
  };

  return {
    close,
    async ask(question, patience) {
      const child = await (worker ??= start());
      const answers: Answer[] = [];
      return new Promise((resolve, reject) => {
        let timer: NodeJS.Timeout | undefined;
        const end = (result: () => void) => {
          clearTimeout(timer);
          child.removeAllListeners();
          result();
        };
        const wait = () => {
          const test = question.tests[answers.length];
          if (test === undefined) return end(() => resolve(answers));
          const milliseconds = patience(test);
          timer = setTimeout(() => {
            close();
            answers.push({ test, failure: "takes too long", milliseconds });
            end(() => resolve(answers));
          }, milliseconds);
        };
        child.on("message", (answer: Answer) => {
          clearTimeout(timer);
          answers.push(answer);
          if (answer.failure === undefined) wait();
          else end(() => resolve(answers));
        });
        child.once("exit", () => end(() => reject(new Error("the tests' process ended"))));
        wait();
        child.send(question);
      });
    },
  };
}
