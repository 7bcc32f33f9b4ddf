import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { ROOT } from "../src/tools/paths";
import { once } from "./once";

/* The program's text, each file read and parsed once for all the tests of a process that look at it. */

/** The files of TypeScript in a folder, by their paths from the project's top level. */
export const sourcesIn = once((folder: string): readonly string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" })
    .filter((file) => /\.tsx?$/.test(file))
    .map((file) => join(folder, file)),
);

/** The text of a file. */
export const sourceText = once((file: string) => readFileSync(join(ROOT, file), "utf8"));

/** A file taken apart, without what its comments say. */
export const parsed = once((file: string) => parse(sourceText(file), file));

/** A text taken apart as a file would be. */
export const parse = (text: string, name = "module.ts"): ts.SourceFile =>
  ts.createSourceFile(
    name,
    text,
    { languageVersion: ts.ScriptTarget.Latest, jsDocParsingMode: ts.JSDocParsingMode.ParseNone },
    true,
  );

/** What a file imports, as it names it. */
export const importsOf = once((file: string): readonly string[] =>
  ts.preProcessFile(sourceText(file)).importedFiles.map(({ fileName }) => fileName),
);
