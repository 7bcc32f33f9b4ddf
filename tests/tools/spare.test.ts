import { spawnSync } from "node:child_process";
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeEach, expect, it } from "vitest";
import { launched } from "../../src/tools/launched.mjs";
import { ROOT } from "../../src/tools/paths";

/* `npm run spare` in a project of two files, one built and one its source, each of which says which it is. */

const project = mkdtempSync(join(tmpdir(), "spare-launcher-"));
const source = "src/cli/main.ts";
const built = "dist/cli.js";
const says = (what: string) => `console.log("${what}", ...process.argv.slice(2));`;

function put(path: string, text: string, minutes: number): void {
  const full = join(project, path);
  mkdirSync(dirname(full), { recursive: true });
  writeFileSync(full, text);
  const written = 1_700_000_000 + 60 * minutes;
  utimesSync(full, written, written);
}

function spare(): string {
  const launcher = join(project, "src/tools/spare.mjs");
  const { stdout, stderr } = spawnSync(process.execPath, [launcher, "calc", "log.xlsx"], {
    encoding: "utf8",
  });
  return stdout.trim() || stderr;
}

beforeEach(() => {
  rmSync(project, { recursive: true });
  mkdirSync(join(project, "src/tools"), { recursive: true });
  const old = 1_700_000_000;
  for (const file of ["src/tools/spare.mjs", "src/tools/launched.mjs"]) {
    copyFileSync(join(ROOT, file), join(project, file));
    utimesSync(join(project, file), old, old);
  }
  utimesSync(join(project, "src/tools"), old, old);
  symlinkSync(join(ROOT, "node_modules"), join(project, "node_modules"));
  put("package.json", `{ "type": "module" }`, 0);
  put("package-lock.json", "{}", 0);
  put(source, `const what: string = "source"; ${says("source")} export { what };`, 0);
  put(built, says("built"), 5);
  utimesSync(join(project, "src/cli"), old, old);
});
afterAll(() => rmSync(project, { recursive: true }));

/** Which of the two it would run. */
const chosen = () => (launched(pathToFileURL(`${project}/`)).href.endsWith(built) ? built : source);

it("runs the built command line where nothing was changed since, with what was asked for", () => {
  expect(chosen()).toBe(built);
  expect(spare()).toBe("built calc log.xlsx");
});

it("runs the source where that is newer, with what was asked for", () => {
  put(source, `${says("source")} export type T = number;`, 6);
  expect(chosen()).toBe(source);
  expect(spare()).toBe("source calc log.xlsx");
});

it.each([
  ["the source was changed", () => put(source, says("source"), 6)],
  ["a file was added deep among the sources", () => put("src/core/load/it's 100%.ts", "", 6)],
  ["other packages are installed", () => put("package-lock.json", "{}", 6)],
  ["nothing was built", () => rmSync(join(project, built))],
])("runs the source where %s", (_, happens) => {
  happens();
  expect(chosen()).toBe(source);
});

it("sees that a source was taken away", () => {
  put("src/core/gone.ts", "", 0);
  utimesSync(join(project, "src/core"), 1_700_000_000, 1_700_000_000);
  expect(chosen()).toBe(built);
  rmSync(join(project, "src/core/gone.ts"));
  expect(chosen()).toBe(source);
});
