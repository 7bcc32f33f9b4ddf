/**
 * What `npm test` does before the tests: lint, types, and the builds that the tests read, those of them that can come out
 * otherwise than the last time. Each keeps one core busy, so they run side by side, as many at a time as there are cores.
 * The first that fails ends it.
 */
import { exec } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { filesUnder, stateOf } from "./freshness";
import { staleOf } from "./dist";
import { CACHE, ROOT } from "./paths";
import { productNames, type ProductName } from "./products";

/** What lint and types have to say of the same files, checked by the same packages, is the same. */
const CHECKED = join(CACHE, "checked");
const NOT_CHECKED = [".git", "node_modules", "dist", "coverage"];
/** What npm has installed, whatever the project's own list says. */
const INSTALLED = "node_modules/.package-lock.json";
const stateNow = () =>
  stateOf(
    [
      ...readdirSync(ROOT).filter((name) => !NOT_CHECKED.includes(name)),
      ...[INSTALLED].filter((path) => existsSync(join(ROOT, path))),
    ].flatMap(filesUnder),
    process.version,
  );
const state = stateNow();
const isChecked = existsSync(CHECKED) && readFileSync(CHECKED, "utf8") === state;
const stale = await staleOf(productNames);

const freshen = (names: readonly ProductName[]) =>
  names.length === 0 ? [] : [`tsx src/tools/freshen.ts ${names.join(" ")}`];

/** The longest first. */
const checks = [
  ...(isChecked ? [] : ["npm run --silent lint"]),
  ...freshen(stale.filter((name) => name === "workbook")),
  ...freshen(stale.filter((name) => name !== "workbook")),
  ...(isChecked ? [] : ["npm run --silent typecheck"]),
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

if (isChecked) process.stdout.write("✓ lint and types: no file has changed since they passed\n");
if (stale.length === 0) process.stdout.write("✓ builds: made of what is there\n");
try {
  await Promise.all(Array.from({ length: availableParallelism() }, oneAfterAnother));
} catch {
  running.forEach((child) => child.kill());
  process.exit(1);
}
// What was changed meanwhile may have been read before or after.
if (!isChecked && stateNow() === state) {
  mkdirSync(CACHE, { recursive: true });
  writeFileSync(CHECKED, state);
}
