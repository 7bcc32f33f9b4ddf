import { readdirSync, statSync } from "node:fs";

/** When a file was written last; never, if there is none. */
const writtenAt = (url) => statSync(url, { throwIfNoEntry: false })?.mtimeMs ?? -Infinity;

/** The built command line where it is fresh, and its source where it is not. */
export function launched(root) {
  const built = new URL("dist/cli.js", root);
  const since = writtenAt(built);
  const sources = readdirSync(new URL("src/", root), { recursive: true });
  const files = [...sources.map((path) => `src/${path}`), "package.json", "package-lock.json"];
  const isFresh = files.every((path) => writtenAt(new URL(encodeURI(path), root)) <= since);
  return isFresh ? built : new URL("src/cli/main.ts", root);
}
