/** The licence notices that must go with code of others wherever it is bundled. */
import { readFileSync } from "node:fs";
import type { Compilation, Module, WebpackPluginInstance } from "webpack";
import { isOfOthers, packageOf, type Package } from "./bundledPackage";
import { BUNDLED, emitting } from "./emitting";

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

/** All licences of some files of others in full: a text a licence, with the packages that it goes with. */
export function licencesOf(files: readonly string[]): string {
  const byText = new Map<string, string[]>();
  for (const { name, version, text } of packagesOf(files)) {
    byText.set(text, [...(byText.get(text) ?? []), `${name} ${version}`]);
  }
  return [...byText].map(([text, names]) => `${names.join(", ")}\n\n${text}\n`).join("\n\n");
}

/**
 * The files of others in a build's bundles. Its list of modules has more, which only helped to make them, and those
 * only where they were not taken from the cache.
 */
function filesOfOthers({ chunks, chunkGraph }: Compilation): string[] {
  const bundled = [...chunks].flatMap((chunk) => [...chunkGraph.getChunkModulesIterable(chunk)]);
  return [...new Set(bundled.flatMap(filesOf))].filter(isOfOthers).sort();
}

const packagesOf = (files: readonly string[]) => [
  ...new Map(files.map(packageOf).map((one) => [one.name, one])).values(),
];

/** A module's file; webpack may have joined several modules into one. */
function filesOf(module: Module): string[] {
  const { resource, modules } = module as { resource?: string; modules?: Module[] };
  if (modules !== undefined) return modules.flatMap(filesOf);
  return resource === undefined ? [] : [resource];
}

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
export const emitLicences = (name: string): WebpackPluginInstance =>
  emitting(
    "licences",
    (emit, compilation) => emit(`licences/${name}.txt`, licencesOf(filesOfOthers(compilation))),
    BUNDLED,
  );
