import { fork, type ChildProcess } from "node:child_process";
import { join } from "node:path";

/** A source to change, and the tests that load it, in the groups in which they are run. */
export interface Job {
  readonly target: string;
  readonly tests: readonly (readonly string[])[];
}

/** Runs changed sources through the tests, one at a time. */
export interface Runner {
  /** Whether the tests pass all the same; a change that sends them round for ever is found out by that. */
  survives(source: string, milliseconds: number): Promise<boolean>;
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
      child.once("error", reject);
    });
  const close = () => {
    void worker?.then((child) => child.kill("SIGKILL"));
    worker = undefined;
  };

  return {
    close,
    async survives(source, milliseconds) {
      const child = await (worker ??= start());
      return new Promise((resolve, reject) => {
        const end = (result: () => void) => {
          clearTimeout(timer);
          child.removeAllListeners();
          result();
        };
        const timer = setTimeout(() => {
          close();
          end(() => resolve(false));
        }, milliseconds);
        child.once("message", (survives: boolean) => end(() => resolve(survives)));
        child.once("exit", () => end(() => reject(new Error("the tests' process ended"))));
        child.send(source);
      });
    },
  };
}
