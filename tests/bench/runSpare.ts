import { spawnSync } from "node:child_process";
import { performance } from "node:perf_hooks";
import { pathToFileURL } from "node:url";
import { built } from "../built";

/** What one command took. */
export interface Run {
  readonly status: number | null;
  readonly seconds: number;
  /** The processor's seconds in the program itself, which other programs on the machine change little. */
  readonly user: number;
  /** The most memory it had. */
  readonly megabytes: number;
}

/** Runs the built program, which says at its end what it took. Needs `dist/cli.js`. */
export function runSpare(...args: readonly string[]): Run {
  const program = `
    process.on("exit", () => {
      const { userCPUTime, maxRSS } = process.resourceUsage();
      process.stderr.write("took " + userCPUTime / 1e6 + " " + maxRSS / 1024);
    });
    await import(${JSON.stringify(pathToFileURL(built("cli.js")).href)});`;
  const start = performance.now();
  const { stderr, status } = spawnSync(
    process.execPath,
    ["--input-type=module", "-e", program, "--", "spare", ...args],
    { encoding: "utf8", maxBuffer: 1e9 },
  );
  const seconds = (performance.now() - start) / 1000;
  const [, user, megabytes] = /took ([\d.]+) ([\d.]+)$/.exec(stderr) ?? [];
  if (user === undefined) throw new Error(stderr);
  return {
    status,
    seconds,
    user: Math.round(Number(user) * 100) / 100,
    megabytes: Math.round(Number(megabytes)),
  };
}
