/** The licence notices that must go with code of others wherever it is bundled. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { usualText } from "./usualLicences";
import webpack, { type Compilation, type Compiler, type Module } from "webpack";

/** One line a licence with its packages, then the notices that stand in their files, each once. */
export function noticesOf(compilation: Compilation): string[] {
  const files = filesOfOthers(compilation);
  const packages = packagesOf(files);
  const licences = [...new Set(packages.map(({ terms }) => terms))];
  return [
    ...licences.flatMap((terms) => [
      terms,
      "",
      ...inLines(packages.filter((one) => one.terms === terms)),
      "",
    ]),
    "Some of these carry code of their predecessors, modified for JavaScript:",
    ...[...new Set(files.flatMap(noticesIn))].flatMap((notice) => ["", notice]),
  ];
}

/** All licences in full: a text a licence, with the packages that it goes with. */
export function licencesOf(compilation: Compilation): string {
  const byText = new Map<string, string[]>();
  for (const { name, version, text } of packagesOf(filesOfOthers(compilation))) {
    byText.set(text, [...(byText.get(text) ?? []), `${name} ${version}`]);
  }
  return [...byText].map(([text, names]) => `${names.join(", ")}\n\n${text}\n`).join("\n\n");
}

const filesOfOthers = (compilation: Compilation) =>
  [...compilation.modules].flatMap(filesOf).filter(isOfOthers).sort();

const packagesOf = (files: readonly string[]) => [
  ...new Map(files.map(packageOf).map((one) => [one.name, one])).values(),
];

/** A module's file; webpack may have joined several modules into one. */
function filesOf(module: Module): string[] {
  const { resource, modules } = module as { resource?: string; modules?: Module[] };
  if (modules !== undefined) return modules.flatMap(filesOf);
  return resource === undefined ? [] : [resource];
}

const isOfOthers = (file: string) => /[\\/]node_modules[\\/]/.test(file);

interface Package {
  readonly name: string;
  readonly version: string;
  /** Under what it may be used, and whose it is. */
  readonly terms: string;
  /** The licence in full, with the notice that goes with it. */
  readonly text: string;
}

/** The package that a file belongs to: one without a name, a version, a licence or its text may not be bundled. */
export function packageOf(file: string): Package {
  const { folder, name, version, license } = manifestOf(file);
  if (!license) throw new Error(`${name} ${version} is bundled and names no licence`);
  const notice = readIn(folder, /^notice(?:\.(?:txt|md))?$/i);
  const text = licenceText(folder, license);
  if (text === undefined) {
    throw new Error(`${name} ${version} is bundled without the text of its licence, ${license}`);
  }
  const terms = [TERMS[license] ?? license, notice].join(" ").trim();
  return { name, version, terms, text: [text, notice].join("\n\n").trim() };
}

interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly author?: string | { readonly name: string };
}

/** The nearest manifest that names a package; some lie in its folders to say no more than how files are to be read. */
function manifestOf(file: string): Manifest & { readonly folder: string } {
  for (let folder = dirname(file); isOfOthers(folder); folder = dirname(folder)) {
    const path = join(folder, "package.json");
    if (!existsSync(path)) continue;
    const manifest = JSON.parse(readFileSync(path, "utf8")) as Partial<Manifest>;
    if (manifest.name && manifest.version) return { ...(manifest as Manifest), folder };
  }
  throw new Error(`${file} is bundled, and no package says that it is its own`);
}

/** The text of a licence: a file's own, that in the read-me, or the usual one with the author's name in it. */
function licenceText(folder: string, license: string): string | undefined {
  const own = readIn(folder, /^licen[cs]e/i);
  if (own !== "") return own;
  const readMe = readIn(folder, /^readme/i);
  const [, section] = /^#+ *licen[cs]e\s*$([^]*)/im.exec(readMe) ?? [];
  if (section && /permission/i.test(section)) return section.trim();
  const { author } = manifestOf(join(folder, "package.json"));
  return usualText(license, typeof author === "string" ? author : author?.name);
}

/** What a folder's first file of such a name says; nothing where there is none. */
function readIn(folder: string, name: RegExp): string {
  const file = readdirSync(folder).find((each) => name.test(each));
  return file === undefined ? "" : readFileSync(join(folder, file), "utf8").trim();
}

/** In one line, where a licence's name alone is not enough. */
const TERMS: Readonly<Record<string, string>> = {
  "Apache-2.0":
    "Licensed under the Apache License, Version 2.0, https://www.apache.org/licenses/LICENSE-2.0.",
};

/** Names and versions, a few a line. */
function inLines(packages: readonly Package[]): string[] {
  const names = packages.map(({ name, version }) => `${name} ${version}`);
  const lines: string[] = [];
  for (let at = 0; at < names.length; at += 3) lines.push(names.slice(at, at + 3).join(", "));
  return lines;
}

/** The copyright notices of the code a file was made from, quoted in its first comment. */
function noticesIn(file: string): string[] {
  const [, head = ""] = /^\/\*+([\s\S]*?)\*\//.exec(readFileSync(file, "utf8")) ?? [];
  const plain = head.replace(/^[ \t]*\*? ?/gm, "");
  return [...plain.matchAll(/```text\n([\s\S]*?)\n```/g)].map(([, notice = ""]) => notice.trim());
}

/** Writes beside a bundle the licences of what others wrote of it: `licences/workbook.txt`. */
export class EmitLicences {
  apply(compiler: Compiler): void {
    const name = compiler.options.name ?? "bundle";
    compiler.hooks.thisCompilation.tap("EmitLicences", (compilation) => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_SUMMARIZE;
      compilation.hooks.processAssets.tap({ name: "EmitLicences", stage }, () => {
        const text = licencesOf(compilation);
        compilation.emitAsset(`licences/${name}.txt`, new webpack.sources.RawSource(text));
      });
    });
  }
}
