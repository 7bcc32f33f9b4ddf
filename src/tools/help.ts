/** The help page that ships in dist/: every function with its worked examples, the rules for cells, the cautions. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { onlyCell } from "../cells";
import { readCatalogue } from "./catalogue";
import type { CustomEnum } from "../functions/catalogue";
import { pictures, type Picture } from "../pane/pictures";
import { methodHtml } from "./methods/html";
import { NOTATION } from "./methods/notation";
import { ROOT } from "./paths";
import { readReference, type Entry, type Family, type WorkedExample } from "./reference";

/** The cautions that README, help, pane and demo all carry. */
export const cautions = JSON.parse(
  readFileSync(join(ROOT, "shared", "cautions.json"), "utf8"),
) as readonly string[];

/** What a coach must know about cells, once, in plain words: a heading and what belongs under it. */
const CELLS: readonly (readonly [heading: string, paragraphs: readonly string[]])[] = [
  [
    "Blanks",
    [
      'A blank reserve is not a reserve of 0, which is a set to failure. Desktop Excel cannot tell our functions the two apart, so write <code>D2:D50&amp;""</code> for cells that hold reserves: then a blank stays a blank, on every host, and the set is left out where its reserve matters. The Toolbox writes it for you.',
      "Where a quantity cannot be 0 (a load in a strength function, reps, sets, minutes, body mass, a test score, a group size), 0 and blank both mean: nothing here yet.",
      "A row that is not filled in yet shows nothing, so formulas can be filled down before the data comes.",
    ],
  ],
  [
    "DNS, inj, –",
    [
      'In a column of numbers, text without digits ("DNS", "inj", "–") is a missing value. Text with digits that is no number ("80kg") is an error that names its row, so that nothing is left out unseen. Reports on rows say how many were used (<code>n</code>) and how many were left out (<code>dropped</code>).',
      '"2,5" and "2.5" are the same number. "1,250" could be 1.25 or 1250, so it is an error.',
      "Where reps or a reserve have turned into a date, as 3-5 does, the error says so.",
    ],
  ],
  [
    "Kilograms and pounds",
    [
      'Loads are in your sheet\'s own unit. Nothing is converted unseen: in pounds, give 5 as the smallest step, and "lb" for the plates.',
      "Fractions are fractions: 0.05 is 5%. Let the cell's format show the percent sign.",
    ],
  ],
  [
    "Headings",
    [
      "A first row of headings may be part of the range. It is left out where rows are counted, and names what needs a name.",
    ],
  ],
  [
    "One formula for many cells",
    [
      "Every argument takes a range: one formula fills a column, a row or a grid. A column against a row makes a grid; a single value goes with all.",
      "Results need free cells below and beside the formula. Where something stands in the way, Excel shows #SPILL!.",
    ],
  ],
  [
    "Tables",
    [
      'Excel does not let results spill inside a Table. There, write one formula a row (<code>=SPARE.E1RM([@load], [@reps], [@reserve]&amp;"")</code>) or ask for one value with the last argument, part (<code>=SPARE.RELIABILITY(Tests[[trial 1]:[trial 3]], , "typical error")</code>).',
      "From outside, a Table's columns are the best ranges there are: <code>Log[load]</code> grows with the Table.",
    ],
  ],
  [
    "How long a range may be",
    [
      "Point at real ranges (<code>C2:C500</code>), a Table's columns or, in newer Excel, trimmed ones (<code>C2:.C9999</code>), which end with the data. Whole columns (<code>C:C</code>) are a million cells; Excel refuses a call that hands over more than 5 MB.",
    ],
  ],
  [
    "Sharing a workbook",
    [
      "Whoever has the add-in sees everything live. Without it Excel shows the last results until it calculates anew, then #NAME?. For those, make a copy with values, or a copy that calculates without the add-in; the project's command line makes both (<code>spare plain</code>, <code>spare portable</code>), and says which functions stay live and what became a value.",
      "Everything is computed on your own computer. No cell is sent anywhere.",
    ],
  ],
  [
    "Errors",
    [
      "#VALUE! is input that cannot be right, #N/A too little data or no solution. Both carry a message: select the cell and press the sign beside it in Excel; the workbook page shows it under the grid; in Google Sheets it is the note of #ERROR!, or the text starts with an exclamation mark.",
      "#NAME? means the functions are not there: the add-in is not loaded.",
    ],
  ],
];

/** The page as HTML, without script; its style sheet is a file of its own so that the policy can be strict. */
export async function helpPage(): Promise<string> {
  const families = await readReference();
  const { enums } = readCatalogue();
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
      <p><strong>First</strong> <a href="#cautions">Before anybody lifts</a> <a href="#cells">How cells are read</a> <a href="#pictures">Pictures</a> <a href="#cards">Cards for phones</a> <a href="#methods">Methods</a></p>
${families.map(familyLinks).join("\n")}
    </nav>
    <main>
      <section id="cautions">
        <h2>Before anybody lifts</h2>
        <ul>${cautions.map((text) => `<li>${escaped(text)}</li>`).join("")}</ul>
      </section>
      <section id="cells">
        <h2>How cells are read</h2>
${CELLS.map(([heading, paragraphs]) => topic(heading, paragraphs)).join("\n")}
      </section>
      <section id="pictures">
        <h2>Pictures of the selected cells</h2>
${pictures.map(pictureOf).join("\n")}
      </section>
      <section id="cards">
        <h2>Cards for the squad's phones</h2>
${CARDS.map((text) => `        <p>${text}</p>`).join("\n")}
      </section>
      <section id="methods">
        <h2>How to read the methods</h2>
        <p>Each function's method unfolds below it: the equation, what it assumes, when not to use it, an example with every number on the way, and where it comes from.</p>
${NOTATION.map((text) => `        <p>${escaped(text)}</p>`).join("\n")}
      </section>
${families.map((family) => familySection(family, enums)).join("\n")}
    </main>
  </body>
</html>
`;
}

/** A picture with what has to be selected for it. */
const pictureOf = ({ id, title, describe }: Picture) =>
  `        <figure id="picture-${id}">
          <figcaption><strong>${escaped(title)}</strong> ${escaped(describe)}</figcaption>
          <img src="pictures/${id}.png" alt="${escaped(title)}, drawn of the demo squad" width="720" loading="lazy" />
        </figure>`;

/** How a coach gives a squad its cards. */
const CARDS = [
  "Functions in cells do not run on phones; a card does: one small page a lifter, with the maxima, today's sets, the loads " +
    "for every reserve and a calculator, which works without a network.",
  "Add the ready sheet <strong>Cards for phones</strong> (or use any table headed <code>lifter</code>, then a lift a column " +
    "with its unit), and put in your names and maxima.",
  "Open the <strong>Toolbox</strong> at <strong>Cards</strong>, press <strong>Read the cells</strong>, and hand out files, links, or a printed " +
    "page with a code for each lifter.",
  "Whoever has a card's file, link or code can read the lifter's name and loads. An estimate on a card is no more a " +
    "clearance to lift than one in a cell.",
];

const topic = (heading: string, paragraphs: readonly string[]) =>
  `        <h3>${escaped(heading)}</h3>
${paragraphs.map((text) => `        <p>${text}</p>`).join("\n")}`;

const familyLinks = ({ title, functions }: Family) =>
  `      <p><strong>${title}</strong> ${functions.map(({ id }) => `<a href="#${id}">${id}</a>`).join(" ")}</p>`;

type Enums = readonly CustomEnum[];

const familySection = (
  { name, title, functions }: Family,
  enums: Enums,
) => `      <section id="${name}">
        <h2>${title}</h2>
${functions.map((entry) => article(entry, enums)).join("\n")}
      </section>`;

function article(entry: Entry, enums: Enums): string {
  const terms = entry.parameters.map(({ name, optional, description, customEnumId }) => {
    const choices = enums.find(({ id }) => id === customEnumId);
    const term = optional ? `[${name}]` : name;
    return `<dt>${term}</dt><dd>${escaped(description)}${choices ? choiceList(choices) : ""}</dd>`;
  });
  return `        <article id="${entry.id}">
          <h3>${entry.id}</h3>
          <p><code>${escaped(entry.signature)}</code></p>
          <p>${escaped(entry.description)}</p>
          <dl>${terms.join("")}</dl>
          <p><strong>Result.</strong> ${escaped(entry.returns)}</p>
          <p><strong>Errors.</strong> ${escaped(entry.errors)}</p>
${entry.worked.map(example).join("\n")}
          <p class="source"><strong>Source.</strong> ${escaped(entry.source)}</p>
${methodHtml(entry.method, escaped)}
        </article>`;
}

/** The words that an argument offers, with what each means where that is not the word itself. */
function choiceList({ values }: CustomEnum): string {
  const items = values.map(({ stringValue, tooltip }) => {
    const meaning = tooltip.trim() === "" ? "" : ` ${escaped(tooltip.trim())}`;
    return `<li><code>"${escaped(stringValue)}"</code>${meaning}</li>`;
  });
  return `<ul class="choices">${items.join("")}</ul>`;
}

function example({ formula, shown }: WorkedExample): string {
  const code = `<code>${escaped(formula)}</code>`;
  if (shown === undefined) return `          <p>${code}</p>`;
  const only = onlyCell(shown);
  if (only !== undefined) return `          <p>${code} gives <output>${escaped(only)}</output></p>`;
  const rows = shown.map(
    (row) => `<tr>${row.map((cell) => `<td>${escaped(cell)}</td>`).join("")}</tr>`,
  );
  return `          <p>${code} gives</p>
          <div class="cells" tabindex="0" role="group" aria-label="Result of the example"><table>${rows.join("")}</table></div>`;
}

const escaped = (text: string) =>
  text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
