import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { DIST, ROOT } from "./paths";

/** What the built files are made of. */
const sources = ["src", "shared", "manifest.xml", "package.json", "package-lock.json"];

/** Beside the built files, the state of the sources they were made of. */
const stamp = join(DIST, ".built");

/** Whether the last build is still what the sources would give. */
export function isFresh(): boolean {
  return existsSync(stamp) && readFileSync(stamp, "utf8") === stateOfSources();
}

/** Notes, after a build, what it was made of. */
export function markFresh(): void {
  writeFileSync(stamp, stateOfSources());
}

function stateOfSources(): string {
  const hash = createHash("sha256");
  for (const file of sources.flatMap((source) => filesUnder(join(ROOT, source)))) {
    const { size, mtimeMs } = statSync(file);
    hash.update(`${file}\n${size}\n${mtimeMs}\n`);
  }
  return hash.digest("hex");
}

function filesUnder(path: string): string[] {
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesUnder(join(path, name)));
}
