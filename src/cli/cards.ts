import { mkdir, readFile, realpath } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { Card } from "../cards/card";
import { cardFiles, checkAddress, linksFile, printedFile, PRIVACY } from "../cards/handOut";
import { readCards } from "../cards/readCards";
import type { Book } from "../recalculate/book";
import type { Outcome } from "../recalculate/calculate";
import type { CellValue } from "../xlsx/model";
import { BadUsage, type CardsArguments } from "./arguments";
import { reasonOf } from "./files";
import { writeOutput } from "./output";

/** Writes a card for every lifter of a workbook's sheet, and says in lines what was written. */
export async function writeCards(
  { output, sheet, page }: CardsArguments,
  book: Book,
  outcomes: readonly Outcome[],
): Promise<string> {
  const made = new Date().toISOString().slice(0, 10);
  const read = readCards(cellsOf(sheet, book, outcomes), made);
  const said = page ?? read.page;
  const address = said === undefined ? undefined : checkAddress(said);
  const files = [
    ...cardFiles(await builtPage(), read.cards),
    printedFile(read.cards, address),
    ...(address === undefined ? [] : [linksFile(read.cards, address)]),
  ];
  await mkdir(output, { recursive: true }).catch((error: unknown) => {
    throw new BadUsage(`${output} cannot be made: ${reasonOf(error)}`);
  });
  for (const { name, text } of files) {
    await writeOutput(join(output, name), new TextEncoder().encode(text));
  }
  return reportOn(
    output,
    read.cards,
    files.map(({ name }) => name),
    read.notes,
    address,
  );
}

function reportOn(
  folder: string,
  cards: readonly Card[],
  names: readonly string[],
  notes: readonly string[],
  address: string | undefined,
): string {
  return [
    `${cards.length} ${cards.length === 1 ? "card" : "cards"} in ${folder}:`,
    ...names.map((name) => `  ${name}`),
    ...(address === undefined
      ? ["No links and no codes: name the hosted card page with --page or beside “card page”."]
      : []),
    ...notes,
    PRIVACY,
  ].join("\n");
}

/** A sheet's values as they were saved, with what was worked out now over them. */
function cellsOf(name: string, book: Book, outcomes: readonly Outcome[]): CellValue[][] {
  const sheet = book.sheets.find((one) => one.name.toLowerCase() === name.toLowerCase());
  if (!sheet)
    throw new BadUsage(`there is no sheet "${name}"; --sheet names the one with the cards`);
  const cells: CellValue[][] = [];
  const put = (row: number, column: number, value: CellValue) => {
    while (cells.length <= row) cells.push([]);
    cells[row]![column] = value;
  };
  for (const row of sheet.rows)
    for (const cell of row.cells) put(cell.row, cell.column, cell.value);
  for (const { cell, area, values } of outcomes) {
    if (cell.sheet !== sheet) continue;
    values.forEach((line, row) =>
      line.forEach((value, column) => put(area.startRow + row, area.startColumn + column, value)),
    );
  }
  return cells.map((line) => Array.from(line, (value) => value ?? null));
}

/** The built page of cards, beside the built command line or in the build of this copy of the project. */
async function builtPage(): Promise<string> {
  const program = await realpath(process.argv[1] ?? ".").catch(() => ".");
  const places = [join(dirname(program), "card"), join(process.cwd(), "dist", "card")];
  for (const place of places) {
    try {
      return await readFile(join(place, "index.html"), "utf8");
    } catch {
      // The next place may have it.
    }
  }
  throw new BadUsage("the page of cards is not built; npm run build makes it");
}
