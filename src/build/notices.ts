/** The licence notices that must go with code of others wherever it is bundled. */
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Compilation, Module } from "webpack";

/** One line a licence with its packages, then the notices that stand in their files, each once. */
export function noticesOf(compilation: Compilation): string[] {
  const files = [...compilation.modules].flatMap(filesOf).filter(isOfOthers).sort();
  const packages = [...new Map(files.map(packageOf).map((one) => [one.name, one])).values()];
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
}

function packageOf(file: string): Package {
  let folder = dirname(file);
  while (!existsSync(join(folder, "package.json"))) folder = dirname(folder);
  const { name, version, license } = JSON.parse(
    readFileSync(join(folder, "package.json"), "utf8"),
  ) as { name: string; version: string; license: string };
  return { name, version, terms: [TEXTS[license] ?? license, ownNotice(folder)].join(" ").trim() };
}

/** Where the text of a licence stands that a package only names. */
const TEXTS: Readonly<Record<string, string>> = {
  "Apache-2.0":
    "Licensed under the Apache License, Version 2.0, https://www.apache.org/licenses/LICENSE-2.0.",
};

function ownNotice(folder: string): string {
  const file = join(folder, "NOTICE");
  return existsSync(file) ? readFileSync(file, "utf8").trim() : "";
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
  return [...plain.matchAll(/```text\n([\s\S]*?)\n```/g)].map(([, notice]) => notice.trim());
}
