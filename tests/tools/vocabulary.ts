import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { readCatalogue } from "../../src/tools/catalogue";
import { readMethod } from "../../src/tools/methods/read";
import { NOTATION } from "../../src/tools/methods/notation";
import { ROOT } from "../../src/tools/paths";
import { allMessages } from "../functions/voice";
import { parsed, sourcesIn } from "../sources";
import { ourSheets } from "../ourSheets";

/** Words that a coach can read, and where. */
export interface Said {
  readonly where: string;
  readonly text: string;
}

const read = (path: string) => readFileSync(join(ROOT, path), "utf8");

/** What the last column of the vocabulary's tables, and its list of spellings, rule out. */
export const ruledOut: readonly string[] = read("docs/vocabulary.md")
  .split("\n")
  .flatMap((line) => {
    const cells = line.split("|");
    const listed = cells.length === 5 ? cells[3] : /^\s*Not: /.test(line) ? line : "";
    return [...(listed ?? "").matchAll(/`([^`]+)`/g)].map(([, word = ""]) => word);
  });

/** Prose without what is typed, code and addresses. */
const prose = (markdown: string) =>
  markdown
    .replace(/```[\s\S]*?```/g, " ")
    .replace(/`[^`\n]*`/g, " ")
    .replace(/\]\([^)]*\)/g, "] ")
    .replace(/https?:\S+/g, " ");

/** The documents that coaches read. The changelog tells of words that were. */
const DOCUMENTS = [
  "README.md",
  ...readdirSync(join(ROOT, "docs"))
    .filter((file) => file.endsWith(".md"))
    .filter((file) => !["vocabulary.md", "changelog.md", "functions.md"].includes(file))
    .map((file) => `docs/${file}`),
];

const documents = (): Said[] =>
  DOCUMENTS.flatMap((file) =>
    prose(read(file))
      .split(/\n\s*\n/)
      .map((text) => ({ where: file, text })),
  );

/** What Excel shows while a function is typed, and the help beside it; labels and arguments are names. */
const help = (): Said[] =>
  readCatalogue().functions.flatMap((entry) =>
    [
      entry.description,
      entry.returns,
      entry.errors,
      ...entry.parameters.map(({ description }) => description),
    ].map((text) => ({
      where: entry.name,
      text: text.replace(/"[^"]*"/g, " ").replace(/^A report of [^;]*?:.*?(\.|$)/, " "),
    })),
  );

/** How the functions compute what they do, without what is typed and what goes to a journal. */
const methods = (): Said[] => [
  ...NOTATION.map((text) => ({ where: "notation", text })),
  ...readCatalogue().functions.flatMap(({ id, family }) => {
    const { assumes, notFor, story } = readMethod(family, id);
    return [...assumes, ...notFor, story].map((text) => ({ where: `method of ${id}`, text }));
  }),
];

/** The words on the demo's sheets and on the ready ones. */
const sheets = (): Said[] =>
  (["demo", "pane"] as const).flatMap((folder) =>
    ourSheets(folder).sheets.flatMap(([id, sheet]) =>
      Object.values(sheet.cells)
        .flatMap((row) => Object.values(row))
        .map(({ value }) => value)
        .filter((value) => typeof value === "string")
        .map((text) => ({ where: `${folder} ${id}`, text })),
    ),
  );

/** Texts with a blank in them, as the hosts and the Toolbox write them. */
function spoken(file: string): Said[] {
  const found: Said[] = [];
  const visit = (node: ts.Node): void => {
    const isText =
      ts.isStringLiteral(node) ||
      ts.isNoSubstitutionTemplateLiteral(node) ||
      ts.isTemplateHead(node) ||
      ts.isTemplateMiddle(node) ||
      ts.isTemplateTail(node);
    const isStyle = isText && node.text.includes("@page");
    if (isText && !isStyle && /[a-z] [a-z]/i.test(node.text)) {
      found.push({ where: file, text: node.text.replace(/<code>.*?<\/code>|<[^>]*>/g, " ") });
    }
    ts.forEachChild(node, visit);
  };
  visit(parsed(file));
  return found;
}

/** What is asked and not said: a search may be asked in any words. */
const ASKED = ["src/pane/search/synonyms.ts"];

const hosts = (): Said[] =>
  ["src/pane", "src/hosts", "src/cards", "src/cli", "src/tools/help.ts"]
    .flatMap((place) => (place.endsWith(".ts") ? [place] : sourcesIn(place)))
    .filter((file) => !ASKED.includes(file))
    .flatMap(spoken);

const messages = (): Said[] => allMessages.map(({ file, text }) => ({ where: file, text }));

const offers = (): Said[] =>
  ["shared/pane/offers.json", "shared/cautions.json"].map((where) => ({
    where,
    text: read(where),
  }));

/** All that a coach can read. */
export const allSaid = (): Said[] => [
  ...documents(),
  ...help(),
  ...methods(),
  ...sheets(),
  ...hosts(),
  ...messages(),
  ...offers(),
];
