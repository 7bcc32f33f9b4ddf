/**
 * The catalogue of cell functions, made once from the JSDoc of `src/functions/`. Every consumer reads this:
 * Excel, the embedded workbook, the Sheets script, the help, docs/functions.md.
 */
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import * as generator from "custom-functions-metadata";
import ts from "typescript";
import { phrases } from "../functions/phrases";
import type { Catalogue, CatalogueFunction, Metadata } from "../functions/catalogue";

const FUNCTIONS = join(dirname(fileURLToPath(import.meta.url)), "..", "functions");

/** The metadata as Excel reads it (functions.json); `helpPage` is the address its help links point into. */
export function readMetadata(helpPage?: string): Metadata {
  return metadataOf(sources(), helpPage);
}

/** The metadata with what only a reader needs: family, result, errors, examples, sources. */
export function readCatalogue(): Catalogue {
  const files = sources();
  const metadata = metadataOf(files);
  const notes = notesIn(files);
  return {
    ...metadata,
    functions: metadata.functions.map((entry) => ({ ...entry, ...notes.get(entry.id)! })),
  };
}

interface Source {
  readonly family: string;
  readonly text: string;
}

/** The shared choices, then the families in the order the index names them, and the files in their family's order. */
function sources(): Source[] {
  const read = (file: string) => spelledOut(readFileSync(join(FUNCTIONS, `${file}.ts`), "utf8"));
  const namedIn = (index: string) =>
    [...read(index).matchAll(/from "\.\/(\w+)"/g)].map(([, name = ""]) => name);
  return [
    { family: "choices", text: read("choices") },
    ...namedIn("index").flatMap((family) =>
      namedIn(`${family}/index`).map((name) => ({ family, text: read(`${family}/${name}`) })),
    ),
  ];
}

/** A source with its shared sentences in their places: `{@phrase equation}`, `{@phrase parts reading}`. */
export function spelledOut(source: string): string {
  return source.replace(
    /\{@phrase (\w+)(?: ([^}]+))?\}/g,
    (tag, name: string, example?: string) => {
      const phrase = phrases[name];
      if (typeof phrase === "function" && example !== undefined) return phrase(example);
      if (typeof phrase === "string" && example === undefined) return phrase;
      throw new Error(`${tag}: src/functions/phrases.ts has no such sentence`);
    },
  );
}

const textOf = (files: readonly Source[]) => files.map(({ text }) => text).join("\n");

/** Remembers what was found in the sources, until one of them changes. */
function ofSources<T>(find: (files: readonly Source[]) => T): (files: readonly Source[]) => T {
  let last: { readonly text: string; readonly found: T } | undefined;
  return (files) => {
    const text = textOf(files);
    if (last?.text !== text) last = { text, found: find(files) };
    return last.found;
  };
}

/** The generator looks for an enum only in the file that uses it, so it gets all of them as one. */
const generated = ofSources((files) => generator.parseTree(textOf(files), "functions.ts"));

const notesIn = ofSources((files) => new Map(files.flatMap(readNotes)));

function metadataOf(files: readonly Source[], helpPage?: string): Metadata {
  const { functions, enums, extras } = generated(files);
  const errors = extras.flatMap((extra) => extra.errors);
  if (errors.length > 0) throw new Error(`The functions' JSDoc is wrong:\n${errors.join("\n")}`);
  return {
    allowCustomDataForDataTypeAny: true,
    // The generator has no way to write this one. Without it Excel stops a call when any cell of a range holds
    // an error, and one bad row would take the whole column down.
    allowErrorForDataTypeAny: true,
    functions: functions.map((entry) => ({
      ...entry,
      ...(helpPage === undefined ? {} : { helpUrl: `${helpPage}#${entry.id}` }),
    })) as Metadata["functions"],
    enums: enums as Metadata["enums"],
  };
}

type Notes = Pick<CatalogueFunction, "family" | "returns" | "errors" | "examples" | "source">;

/** The tags of each function's JSDoc that the generator does not read. */
function readNotes({ family, text }: Source): [id: string, notes: Notes][] {
  const file = ts.createSourceFile(`${family}.ts`, text, ts.ScriptTarget.Latest, true);
  return file.statements.filter(ts.isFunctionDeclaration).flatMap((declaration) => {
    const tags = ts.getJSDocTags(declaration);
    const all = (name: string) =>
      tags
        .filter((tag) => tag.tagName.text.toLowerCase() === name)
        .map((tag) => (ts.getTextOfJSDocComment(tag.comment) ?? "").trim());
    const [id] = all("customfunction");
    if (id === undefined) return [];
    const notes = {
      family,
      returns: all("returns").join(" "),
      errors: all("errors").join(" "),
      examples: all("example"),
      source: all("source").join(" "),
    };
    return [[id, notes] as [string, Notes]];
  });
}
