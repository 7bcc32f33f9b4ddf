import { readdirSync } from "node:fs";
import { join } from "node:path";
import { loadedBy, type Loaded } from "../src/tools/importGraph";
import { ROOT } from "../src/tools/paths";

/**
 * The kinds of tests there are, by what they need, cheapest first. `npx vitest run --project unit` runs one kind.
 *
 * - `unit`: our own code and nothing else; seconds.
 * - `engine`: the spreadsheet engine, or programs of others that read what we write.
 * - `dist`: what the build makes, outside a browser.
 * - `browser`: a browser.
 * - `hostile`: the largest matrices, of which a fast project runs a part.
 * - `simulated`: what is promised of intervals and chances, held to invented data whose truth is known.
 */
export type Project = "unit" | "engine" | "dist" | "browser" | "hostile" | "simulated";

/** Every test file by its project. It says so itself, by what it loads, so no test needs to be listed. */
export async function testsByProject(): Promise<Readonly<Record<Project, string[]>>> {
  const files = testFiles();
  const loaded = await loadedBy(files);
  const of = (project: Project) =>
    files.filter((file) => projectOf(file, loaded.get(file)!) === project);
  return {
    unit: of("unit"),
    engine: of("engine"),
    dist: of("dist"),
    browser: of("browser"),
    hostile: of("hostile"),
    simulated: of("simulated"),
  };
}

/** The project of a test file that loads these. */
export function projectOf(file: string, { files, packages }: Loaded): Project {
  if (packages.has("playwright-core")) return "browser";
  if (files.has("tests/built.ts")) return "dist";
  if (file.startsWith("tests/hostile/")) return "hostile";
  if (file.startsWith("tests/simulated/")) return "simulated";
  const asksOthers = OTHER_PROGRAMS.some((program) => files.has(program));
  return asksOthers || [...packages].some(isEngine) ? "engine" : "unit";
}

/** The helpers through which tests run programs of others; the last takes every source apart by a compiler. */
const OTHER_PROGRAMS = ["tests/libreOffice.ts", "tests/validator.ts", "tests/sources.ts"];

const isEngine = (name: string) => name.startsWith("@univerjs/");

/** What no unit test loads, whatever roundabout way it takes. */
export const isTooMuchForUnit = (name: string) =>
  /^(@univerjs\/|playwright-core|webpack$)/.test(name);

/** Every file of tests. */
export const testFiles = () =>
  (readdirSync(join(ROOT, "tests"), { recursive: true }) as string[])
    .map((file) => `tests/${file.replaceAll("\\", "/")}`)
    .filter((file) => file.endsWith(".test.ts"))
    .sort();
