/** The help page that ships in dist/: every function with its worked examples, the rules for cells, the cautions. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./paths";
import { readReference, type Entry, type Family, type WorkedExample } from "./reference";

/** The cautions that README, help, pane and demo all carry. */
export const cautions = JSON.parse(
  readFileSync(join(ROOT, "shared", "cautions.json"), "utf8"),
) as readonly string[];

/** What a coach must know about cells, once, in plain words. */
const CELLS = [
  'A blank reserve is not a reserve of 0. Desktop Excel cannot tell the two apart, so write <code>D2:D50&amp;""</code> for a range of reserves: then a blank stays a blank, on every host, and the set is left out where reserve matters.',
  "A row that is not filled in yet shows nothing, so formulas can be filled down before the data comes.",
  'Text without digits ("DNS", "inj", "–") is a missing value. Text with digits that is no number ("80kg") is an error that names its row, so that nothing is dropped unseen.',
  '"2,5" and "2.5" are the same number. "1,250" could be 1.25 or 1250, so it is an error.',
  "A first row of headings may be part of the range. It is skipped, and names what needs a name.",
  "Loads are in your sheet's own unit, kilograms or pounds. Nothing is converted unseen.",
  "Every argument takes a range: one formula fills a column, a row or a grid. A column against a row makes a grid.",
  "Excel does not let results spill inside a Table. There, ask for one value with the last argument, part, or write one formula a row. Point at trimmed ranges (<code>C2:.C999</code>) or real ones, not at whole columns.",
  "Fractions are fractions: 0.05 is 5%. Let the cell's format show the percent sign.",
];

/** The page as HTML, without script; its style sheet is a file of its own so that the policy can be strict. */
export async function helpPage(): Promise<string> {
  const families = await readReference();
  return `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'" />
    <title>Reps to Spare: help</title>
    <link rel="icon" href="icons/icon-32.png" />
    <link rel="stylesheet" href="help.css" />
  </head>
  <body>
    <header>
      <h1>Reps to Spare</h1>
      <p>Functions for programming and testing strength training: how close to failure, how heavy, and whether the change is real. In Excel and in the workbook page they are typed <code>=SPARE.E1RM(…)</code>, in Google Sheets <code>=SPARE_E1RM(…)</code>.</p>
    </header>
    <nav aria-label="Functions">
${families.map(familyLinks).join("\n")}
    </nav>
    <main>
      <section id="cautions">
        <h2>Before anybody lifts</h2>
        <ul>${cautions.map((text) => `<li>${escaped(text)}</li>`).join("")}</ul>
      </section>
      <section id="cells">
        <h2>How cells are read</h2>
        <ul>${CELLS.map((text) => `<li>${text}</li>`).join("")}</ul>
      </section>
${families.map(familySection).join("\n")}
    </main>
  </body>
</html>
`;
}

const familyLinks = ({ title, functions }: Family) =>
  `      <p><strong>${title}</strong> ${functions.map(({ id }) => `<a href="#${id}">${id}</a>`).join(" ")}</p>`;

const familySection = ({ name, title, functions }: Family) => `      <section id="${name}">
        <h2>${title}</h2>
${functions.map(article).join("\n")}
      </section>`;

function article(entry: Entry): string {
  const terms = entry.parameters.map(
    ({ name, optional, description }) =>
      `<dt>${optional ? `[${name}]` : name}</dt><dd>${escaped(description)}</dd>`,
  );
  return `        <article id="${entry.id}">
          <h3>${entry.id}</h3>
          <p><code>${escaped(entry.signature)}</code></p>
          <p>${escaped(entry.description)}</p>
          <dl>${terms.join("")}</dl>
          <p><strong>Result.</strong> ${escaped(entry.returns)}</p>
          <p><strong>Errors.</strong> ${escaped(entry.errors)}</p>
${entry.worked.map(example).join("\n")}
          <p class="source"><strong>Source.</strong> ${escaped(entry.source)}</p>
        </article>`;
}

function example({ formula, shown }: WorkedExample): string {
  const code = `<code>${escaped(formula)}</code>`;
  if (shown === undefined) return `          <p>${code}</p>`;
  if (shown.length === 1 && shown[0].length === 1) {
    return `          <p>${code} gives <output>${escaped(shown[0][0])}</output></p>`;
  }
  const rows = shown.map(
    (row) => `<tr>${row.map((cell) => `<td>${escaped(cell)}</td>`).join("")}</tr>`,
  );
  return `          <p>${code} gives</p>
          <div class="cells"><table>${rows.join("")}</table></div>`;
}

const escaped = (text: string) =>
  text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
