/** The pages of docs/api/, which are the report on what the package gives away and its reference in one. */
import { basename, dirname } from "node:path";
import { surfaceOf, type ApiEntry, type ReadTypes } from "./surface";

const CORE = "core/index.d.ts";
const FUNCTIONS = "library/functions.d.ts";

/** Every page by its file's name. */
export function apiPages(read: ReadTypes): ReadonlyMap<string, string> {
  const core = surfaceOf(CORE, read);
  const subjects = core.indexes.map((index) => ({
    name: basename(dirname(index)),
    ...surfaceOf(index, read),
  }));
  const functions = surfaceOf(FUNCTIONS, read);
  const pages = new Map<string, string>();
  for (const { name, about, entries } of subjects) {
    pages.set(`${name}.md`, page(titleOf(name), about, "reps-to-spare", entries));
  }
  pages.set(
    "functions.md",
    page("Cell functions", functions.about, "reps-to-spare/functions", functions.entries),
  );
  const listed = [...subjects, { name: "functions", ...functions }].map(({ name, entries }) => {
    const title = name === "functions" ? "Cell functions" : titleOf(name);
    const links = withAnchors(entries).map(([each, anchor]) => `[${each}](${name}.md#${anchor})`);
    return `- **[${title}](${name}.md)**: ${links.join(", ")}`;
  });
  pages.set(
    "README.md",
    [
      "# What the package gives to programs",
      MADE,
      core.about,
      listed.join("\n"),
      "## Everywhere",
      ...core.entries.map(entryText),
    ].join("\n\n") + "\n",
  );
  return pages;
}

/** Names with the anchors that forges give their headings: small letters, and a number where there was one of them. */
function withAnchors(entries: readonly ApiEntry[]): [name: string, anchor: string][] {
  const times = new Map<string, number>();
  return entries.map(({ name }) => {
    const anchor = name.toLowerCase();
    const before = times.get(anchor) ?? 0;
    times.set(anchor, before + 1);
    return [name, before === 0 ? anchor : `${anchor}-${before}`];
  });
}

const MADE =
  "Made by `npm run api` from the comments beside the code; change it there. A test fails where these pages and the\n" +
  "package's types differ, so that nothing is given away, taken back or changed unseen.";

const titleOf = (name: string) => name.charAt(0).toUpperCase() + name.slice(1);

const page = (title: string, about: string, from: string, entries: readonly ApiEntry[]) =>
  [`# ${title}`, about, `\`import { … } from "${from}"\``, ...entries.map(entryText)].join("\n\n") +
  "\n";

function entryText({ name, declaration, about, parameters, returns, throws }: ApiEntry): string {
  const table = [
    "| argument | what it is |",
    "| --- | --- |",
    ...parameters.map(([each, text]) => `| \`${each}\` | ${inCell(text)} |`),
  ];
  return [
    `## ${name}`,
    about,
    ...(parameters.length > 0 ? [table.join("\n")] : []),
    ...(returns === "" ? [] : [`**Result.** ${returns}`]),
    ...(throws === "" ? [] : [`**Errors.** ${throws}`]),
    `\`\`\`ts\n${declaration}\n\`\`\``,
  ]
    .filter((part) => part !== "")
    .join("\n\n");
}

const inCell = (text: string) => text.replace(/\s*\n\s*/g, " ").replaceAll("|", "\\|");
