/**
 * What `npm test` does before the tests: lint, types, and the builds that the tests read. Each keeps one core busy, so
 * they run side by side, as many at a time as there are cores. The first that fails ends it.
 */
import { exec } from "node:child_process";
import { availableParallelism } from "node:os";
import { productNames } from "./products";

const others = productNames.filter((name) => name !== "workbook");

/** The longest first. */
const checks = [
  "npm run --silent lint",
  "tsx src/tools/freshen.ts workbook",
  `tsx src/tools/freshen.ts ${others.join(" ")}`,
  "npm run --silent typecheck",
];

const run = (command: string) =>
  new Promise<void>((resolve, reject) => {
    const start = performance.now();
    const child = exec(command, { maxBuffer: Infinity }, (error, out, err) => {
      const seconds = ((performance.now() - start) / 1000).toFixed(1);
      process.stdout.write(`${out}${err}${error ? "✗" : "✓"} ${command} (${seconds} s)\n`);
      if (error) reject(error);
      else resolve();
    });
    running.add(child);
    child.on("exit", () => running.delete(child));
  });
const running = new Set<ReturnType<typeof exec>>();

const oneAfterAnother = async () => {
  for (let next = checks.shift(); next !== undefined; next = checks.shift()) await run(next);
};

try {
  await Promise.all(Array.from({ length: availableParallelism() }, oneAfterAnother));
} catch {
  running.forEach((child) => child.kill());
  process.exit(1);
}
