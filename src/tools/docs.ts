/** Writes docs/functions.md from the catalogue: `npm run docs`. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { onlyCell } from "../cells";
import { columns } from "../cli/columns";
import type { Parameter } from "../functions/catalogue";
import { methodLines } from "./methods/markdown";
import { NOTATION } from "./methods/notation";
import { ROOT } from "./paths";
import { readReference, type Entry, type Family, type WorkedExample } from "./reference";

export const FUNCTIONS_PAGE = join(ROOT, "docs", "functions.md");

/** The page's text, every example worked in the spreadsheet engine. */
export async function functionsPage(): Promise<string> {
  const families = await readReference();
  return [
    "# Functions",
    "Made by `npm run docs` from the comments beside the functions and from `shared/methods/`; change it there. In Google",
    "Sheets the names have an underscore: `SPARE_E1RM`. Each function's method unfolds below it.",
    "",
    ...families.map(({ title, functions }) => {
      const links = functions.map(({ id }) => `[${id}](#${id.toLowerCase()})`);
      return `- **${title}**: ${links.join(", ")}`;
    }),
    "",
    "<details><summary>How to read the methods</summary>",
    "",
    ...NOTATION.flatMap((text) => [text.replaceAll("^", "\\^"), ""]),
    "</details>",
    "",
    ...families.flatMap(familyLines),
  ].join("\n");
}

function familyLines({ title, functions }: Family): string[] {
  return [`## ${title}`, "", ...functions.flatMap(functionLines)];
}

function functionLines(entry: Entry): string[] {
  return [
    `### ${entry.id}`,
    "",
    `\`${entry.signature}\``,
    "",
    entry.description,
    "",
    ...(entry.parameters.length > 0 ? ["| argument | what it is |", "|---|---|"] : []),
    ...entry.parameters.map(parameterLine),
    ...(entry.parameters.length > 0 ? [""] : []),
    `**Result.** ${entry.returns}`,
    "",
    `**Errors.** ${entry.errors}`,
    "",
    ...entry.worked.flatMap(exampleLines),
    `**Source.** ${entry.source}`,
    "",
    ...methodLines(entry.method),
  ];
}

const parameterLine = ({ name, optional, description }: Parameter) =>
  `| \`${optional ? `[${name}]` : name}\` | ${description.replaceAll("|", "\\|")} |`;

function exampleLines({ formula, shown }: WorkedExample): string[] {
  if (shown === undefined) return [`\`${formula}\``, ""];
  const only = onlyCell(shown);
  if (only !== undefined) return [`\`${formula}\` gives \`${only}\``, ""];
  return [`\`${formula}\` gives`, "", "```text", ...columns(shown), "```", ""];
}

if (process.argv[1]?.endsWith("docs.ts")) {
  writeFileSync(FUNCTIONS_PAGE, await functionsPage());
  console.log(`wrote ${FUNCTIONS_PAGE}`);
}
