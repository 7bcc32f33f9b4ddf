/**
 * How each function computes what it computes, for a coach and for a referee: a file a function in shared/methods/, which
 * docs/functions.md and the help page both show.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { VERSION } from "../../core/version";
import { ROOT } from "../paths";
import { workLines, type WorkedLine } from "./worked";

export interface Method {
  /** The equation or the algorithm, in plain notation. */
  readonly equation: string;
  readonly assumes: readonly string[];
  readonly notFor: readonly string[];
  /** What the worked example is about. */
  readonly story: string;
  readonly worked: readonly WorkedLine[];
  readonly references: readonly Reference[];
  /** A sentence ready for a methods section; only where results are likely to be published. */
  readonly sentence: string | undefined;
}

export interface Reference {
  readonly text: string;
  readonly doi?: string;
  /** What of it was seen, where anything was; else it is cited from memory. */
  readonly seen?: string;
  /** False where there is nothing to be seen: common practice, or the definition itself. */
  readonly published?: boolean;
}

const FOLDER = join(ROOT, "shared", "methods");

/** All that the methods refer to, each once. */
export const references = JSON.parse(
  readFileSync(join(FOLDER, "references.json"), "utf8"),
) as Readonly<Record<string, Reference>>;

/** The method of a function of this family. */
export function readMethod(family: string, id: string): Method {
  const text = readFileSync(join(FOLDER, family, `${id.toLowerCase()}.md`), "utf8");
  const sections = new Map(
    text
      .split(/^## /m)
      .slice(1)
      .map((section): [string, string] => {
        const end = section.indexOf("\n");
        return [section.slice(0, end).trim(), section.slice(end).trim()];
      }),
  );
  const section = (name: string): string => {
    const found = sections.get(name);
    if (found === undefined || found === "") throw new Error(`the method of ${id} lacks "${name}"`);
    return found;
  };
  if (!text.startsWith(`# ${id}\n`)) throw new Error(`the method of ${id} has another title`);
  const [story, steps] = storyAndSteps(section("Worked example"));
  const sentence = sections.has("Methods sentence") ? flat(section("Methods sentence")) : undefined;
  return {
    equation: fenced(section("Equation")),
    assumes: listed(section("Assumes")),
    notFor: listed(section("Not for")),
    story,
    worked: workLines(steps),
    references: listed(section("References")).map(referenceOf),
    sentence: sentence?.replaceAll("{version}", `Reps to Spare ${VERSION}`),
  };
}

const FENCE = /```text\n([\s\S]*?)\n```/;

function fenced(section: string): string {
  const found = FENCE.exec(section)?.[1];
  if (found === undefined) throw new Error(`a block of text is missing in "${section}"`);
  return found;
}

function storyAndSteps(section: string): [story: string, steps: string[]] {
  return [flat(section.slice(0, section.indexOf("```"))), fenced(section).split("\n")];
}

/** The points of a list, each as one line. */
const listed = (section: string): string[] => section.split(/^- /m).slice(1).map(flat);

const flat = (text: string) => text.replace(/\s+/g, " ").trim();

function referenceOf(key: string): Reference {
  const found = references[key];
  if (!found) throw new Error(`shared/methods/references.json has no ${key}`);
  return found;
}

/** A reference in words, without its DOI: what it is, and whether it was seen. */
export function referenceText({ text, seen, published = true }: Reference): string {
  if (!published) return text;
  return `${text} (${seen === undefined ? "from memory" : `seen: ${seen}`})`;
}

/** The address of a DOI, some of which hold signs that an address or a link in Markdown may not. */
export const doiAddress = (doi: string) =>
  `https://doi.org/${encodeURI(doi).replaceAll("(", "%28").replaceAll(")", "%29")}`;
