import type { Family, Measured, Scenario } from "./scenario";

const HEADINGS = ["function", "its answer", "the truth behind the data", "case", "promised"];

/** What stands in a scenario's row before it is measured. */
const wordsOf = (scenario: Scenario): string[] => [
  `\`${scenario.function}\``,
  scenario.event,
  scenario.truth,
  scenario.case,
  scenario.promised,
];

const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
const cellsOf = (row: string) =>
  row
    .split("|")
    .slice(1, -1)
    .map((cell) => cell.trim());
const keyOf = (cells: readonly string[]) => cells.slice(0, HEADINGS.length).join("|");

const opening = (family: Family) => `<!-- coverage: ${family.name} -->`;
const CLOSING = "<!-- /coverage -->";

/** The part of a document between a family's marks. */
function placeOf(document: string, family: Family): { start: number; end: number } {
  const mark = document.indexOf(opening(family));
  const start = mark + opening(family).length;
  const end = document.indexOf(CLOSING, start);
  if (mark < 0 || end < 0) {
    throw new Error(`the document lacks ${opening(family)} … ${CLOSING}`);
  }
  return { start, end };
}

/** The scenarios' rows that a document's table holds, without what was measured. */
export function rowsIn(document: string, family: Family): string[] {
  const { start, end } = placeOf(document, family);
  const rows = document
    .slice(start, end)
    .split("\n")
    .filter((row) => row.startsWith("| `"));
  return rows.map((row) => keyOf(cellsOf(row)));
}

/** The rows that a family's table should hold. */
export const rowsOf = (family: Family): string[] =>
  family.scenarios.map((scenario) => keyOf(wordsOf(scenario)));

/** The document with a family's table made anew. Rows not measured this time keep what they say. */
export function withTable(
  document: string,
  family: Family,
  measuredOf: (scenario: Scenario) => Measured | undefined,
): string {
  const { start, end } = placeOf(document, family);
  const earlier = new Map(
    document
      .slice(start, end)
      .split("\n")
      .map(cellsOf)
      .map((cells) => [keyOf(cells), cells[HEADINGS.length] ?? ""]),
  );
  const rows = family.scenarios.map((scenario) => {
    const words = wordsOf(scenario);
    const measured = measuredOf(scenario);
    return line([...words, measured ? percent(measured.share) : (earlier.get(keyOf(words)) ?? "")]);
  });
  const head = [line([...HEADINGS, "measured"]), line([...HEADINGS, "-"].map(() => "---"))];
  return `${document.slice(0, start)}\n\n${[...head, ...rows].join("\n")}\n\n${document.slice(end)}`;
}

export const percent = (share: number) => `${(100 * share).toFixed(1)}%`;
