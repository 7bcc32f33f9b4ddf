/**
 * `npm run spare`: the built command line where it is fresh, and its source where it is not. Fresh is a built file that
 * no file of the sources and no list of packages is newer than, which takes some hundredths of a second to find out.
 */
import { readdirSync, statSync } from "node:fs";

const root = new URL("../../", import.meta.url);
const built = new URL("dist/cli.js", root);

/** When a file was written last; never, if there is none. */
const writtenAt = (url) => statSync(url, { throwIfNoEntry: false })?.mtimeMs ?? -Infinity;

function isFresh() {
  const since = writtenAt(built);
  const sources = readdirSync(new URL("src/", root), { recursive: true });
  const files = [...sources.map((path) => `src/${path}`), "package.json", "package-lock.json"];
  return files.every((path) => writtenAt(new URL(encodeURI(path), root)) <= since);
}

if (isFresh()) await import(built.href);
else {
  const { register } = await import("tsx/esm/api");
  register();
  await import(new URL("../cli/main.ts", import.meta.url).href);
}
