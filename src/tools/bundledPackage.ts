/** What a package of others says of itself, where files of it are bundled. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { usualText } from "./usualLicences";

export const isOfOthers = (file: string) => /[\\/]node_modules[\\/]/.test(file);

/** A package that others wrote. */
export interface Package {
  readonly name: string;
  readonly version: string;
  /** Under what it may be used, and whose it is. */
  readonly terms: string;
  /** The licence in full, with the notice that goes with it. */
  readonly text: string;
}

/** The package that a file belongs to: one without a name, a version, a licence or its text may not be bundled. */
export function packageOf(file: string): Package {
  const { folder, name, version, license, author } = manifestOf(file);
  const text = licenceText(folder, license, author);
  if (text === undefined) {
    const lack = license ? `without the text of its licence, ${license}` : "and names no licence";
    throw new Error(`${name} ${version} is bundled ${lack}`);
  }
  const notice = readIn(folder, /^notice(?:\.(?:txt|md))?$/i);
  // A package may bring a licence and not name it.
  const [title = ""] = text.split("\n", 1);
  const called = license ? (TERMS[license] ?? license) : title.trim();
  const terms = [called, notice].join(" ").trim();
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
function licenceText(
  folder: string,
  license: Manifest["license"],
  author: Manifest["author"],
): string | undefined {
  const own = readIn(folder, /^licen[cs]e/i);
  if (own !== "") return own;
  const readMe = readIn(folder, /^readme/i);
  const [, section] = /^#+ *licen[cs]e\s*$([^]*)/im.exec(readMe) ?? [];
  if (section && /permission/i.test(section)) return section.trim();
  return license && usualText(license, typeof author === "string" ? author : author?.name);
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
